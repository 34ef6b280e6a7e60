#include "core/document/nearest.h"

#include "core/base/likeness.h"
#include "core/model/field.h"

#include <algorithm>
#include <string>

namespace snug::detail {

namespace {

constexpr std::size_t kLongest = 64;

// "carry" of "carries".
std::string with_y(std::string_view word) {
  constexpr std::string_view kPlural = "ies";
  if (word.size() <= kPlural.size() || !word.ends_with(kPlural)) return std::string(word);
  return std::string(word.substr(0, word.size() - kPlural.size())) + "y";
}

// One and several of the same differ by one, not by three letters.
std::size_t apart(std::string_view key, std::string_view member) {
  const std::size_t letters = letters_apart(key, member);
  return letters == 0 ? 0 : std::min(letters, 1 + letters_apart(with_y(key), with_y(member)));
}

} // namespace

std::string_view nearest_member(std::string_view key) {
  if (key.empty() || key.size() > kLongest) return {};
  std::size_t best = letters_forgiven(key) + 1;
  std::string_view found;
  const auto look = [&](std::string_view member) {
    const std::size_t n = apart(key, member);
    if (n == 0 || n >= best) return;
    best = n;
    found = member;
  };
  const auto look_into = [&](const StructInfo& table) {
    for (const FieldInfo& f : table.fields) {
      look(f.key);
      if (!f.row) continue;
      for (const FieldInfo& r : f.row->fields) look(r.key);
    }
  };
  for (const Kind kind : kinds_in_document()) {
    look(info_of(kind).collection);
    look_into(info_of(kind));
  }
  return found;
}

} // namespace snug::detail
