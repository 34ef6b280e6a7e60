#include "core/document/nearest.h"

#include "core/model/field.h"

#include <algorithm>
#include <string>
#include <vector>

namespace snug::detail {

namespace {

constexpr std::size_t kLongest = 64;

// Optimal string alignment distance.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i)
    for (std::size_t j = 1; j <= b.size(); ++j) {
      d[i][j] =
          std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
    }
  return d[a.size()][b.size()];
}

// "carry" of "carries".
std::string with_y(std::string_view word) {
  constexpr std::string_view kPlural = "ies";
  if (word.size() <= kPlural.size() || !word.ends_with(kPlural)) return std::string(word);
  return std::string(word.substr(0, word.size() - kPlural.size())) + "y";
}

// One and several of the same differ by one, not by three letters.
std::size_t apart(std::string_view key, std::string_view member) {
  const std::size_t letters = distance(key, member);
  return letters == 0 ? 0 : std::min(letters, 1 + distance(with_y(key), with_y(member)));
}

} // namespace

std::string_view nearest_member(std::string_view key) {
  if (key.empty() || key.size() > kLongest) return {};
  std::size_t best = key.size() < 5 ? 2 : 3; // one more than is allowed
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
