#include "core/model/names.h"

#include "core/base/quote.h"
#include "core/model/columns.h"
#include "core/net/host_name.h"
#include "core/net/limits.h"

#include <array>

namespace snug {

namespace {

// Of a character: what it is, as a bit.
constexpr std::uint8_t kHyphen = 1, kOther = 2;
constexpr auto kCharKinds = [] {
  std::array<std::uint8_t, 256> kinds{};
  kinds.fill(kOther);
  for (char c = 'a'; c <= 'z'; ++c) kinds[static_cast<unsigned char>(c)] = 0;
  for (char c = '0'; c <= '9'; ++c) kinds[static_cast<unsigned char>(c)] = 0;
  kinds[static_cast<unsigned char>('-')] = kHyphen;
  return kinds;
}();

// Whether host_label_from changes nothing.
bool is_label(std::string_view s) {
  if (s.empty() || s.size() > static_cast<std::size_t>(kMaxLabel)) return false;
  std::uint8_t before = kHyphen, wrong = 0;
  for (const char c : s) {
    const std::uint8_t kind = kCharKinds[static_cast<unsigned char>(c)];
    wrong |= (kind & kOther) | (kind & before);
    before = kind;
  }
  return (wrong | before) == 0;
}

} // namespace

std::string host_name_of(const Machine& m) {
  return m.host_name.empty() ? host_label_from(m.name) : m.host_name;
}

std::uint64_t host_name_hash(const Machine& m) {
  std::string name = host_name_of(m);
  for (char& c : name) c = lower(c);
  return std::hash<std::string_view>{}(name);
}

void NameHashes::reserve(std::size_t machines) {
  own.reserve(machines);
  host.reserve(machines);
}

void NameHashes::add(const Machine& m) {
  const std::uint64_t hash = m.name.empty() ? 0 : std::hash<std::string_view>{}(m.name) | 1U;
  own.push_back(hash);
  host.push_back(m.host_name.empty() && is_label(m.name) ? hash : host_name_hash(m) | 1U);
}

std::string full_name_of(const Lab& lab, const Machine& m) {
  std::string name = host_name_of(m);
  if (name.find('.') != std::string::npos || lab.facts.domain.empty()) return name;
  return name + "." + lab.facts.domain;
}

} // namespace snug
