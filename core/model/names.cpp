#include "core/model/names.h"

#include "core/base/quote.h"
#include "core/net/host_name.h"
#include "core/net/limits.h"

namespace snug {

namespace {

constexpr std::uint64_t kOffset = 0xcbf29ce484222325ULL; // FNV-1a

void mix(std::uint64_t& h, char c) { h = (h ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL; }

} // namespace

std::string host_name_of(const Machine& m) {
  return m.host_name.empty() ? host_label_from(m.name) : m.host_name;
}

std::uint64_t host_name_hash(const Machine& m) {
  std::uint64_t h = kOffset;
  if (!m.host_name.empty()) {
    for (const char c : m.host_name) mix(h, lower(c));
    return h;
  }
  // As host_label_from: runs of other characters become one hyphen, none at the ends, at most 63 in all.
  std::size_t length = 0;
  bool hyphen = false;
  for (const char c : m.name) {
    if (length + (hyphen ? 1U : 0U) >= static_cast<std::size_t>(kMaxLabel)) break;
    if (!is_letter(c) && !is_digit(c)) {
      hyphen = length > 0;
      continue;
    }
    if (hyphen) mix(h, '-'), ++length;
    hyphen = false;
    mix(h, lower(c));
    ++length;
  }
  if (length > 0) return h;
  for (const char c : std::string_view("machine")) mix(h, c);
  return h;
}

std::string full_name_of(const Lab& lab, const Machine& m) {
  std::string name = host_name_of(m);
  if (name.find('.') != std::string::npos || lab.facts.domain.empty()) return name;
  return name + "." + lab.facts.domain;
}

} // namespace snug
