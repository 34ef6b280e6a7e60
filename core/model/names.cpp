#include "core/model/names.h"

#include "core/base/quote.h"
#include "core/model/columns.h"
#include "core/net/host_name.h"
#include "core/net/limits.h"

#include <array>

namespace snug {

namespace {

// Of a character: what it is, as a bit.
constexpr std::uint32_t kHyphen = 1, kOther = 2;
constexpr auto kCharKinds = [] {
  std::array<std::uint32_t, 256> kinds{};
  kinds.fill(kOther);
  for (char c = 'a'; c <= 'z'; ++c) kinds[static_cast<unsigned char>(c)] = 0;
  for (char c = '0'; c <= '9'; ++c) kinds[static_cast<unsigned char>(c)] = 0;
  kinds[static_cast<unsigned char>('-')] = kHyphen;
  return kinds;
}();

// FNV-1a (Fowler, Noll, Vo), 64 bits.
constexpr std::uint64_t kHashStart = 0xcbf2'9ce4'8422'2325U, kHashFactor = 0x0000'0100'0000'01b3U;
constexpr std::uint64_t hashed(std::uint64_t hash, char c) {
  return (hash ^ static_cast<unsigned char>(c)) * kHashFactor;
}

struct TextHash {
  std::uint64_t hash = kHashStart;
  bool is_label = false; // host_label_from changes nothing
};
TextHash read_text(std::string_view s) {
  TextHash out;
  std::uint32_t before = kHyphen, wrong = 0;
  for (const char c : s) {
    out.hash = hashed(out.hash, c);
    const std::uint32_t kind = kCharKinds[static_cast<unsigned char>(c)];
    wrong |= kind & (kOther | before);
    before = kind;
  }
  out.is_label = (wrong | before) == 0 && s.size() <= static_cast<std::size_t>(kMaxLabel);
  return out;
}

} // namespace

std::string host_name_of(const Machine& m) {
  return m.host_name.empty() ? host_label_from(m.name) : m.host_name;
}

std::uint64_t host_name_hash(const Machine& m) {
  std::uint64_t hash = kHashStart;
  for (const char c : host_name_of(m)) hash = hashed(hash, lower(c));
  return hash;
}

void NameHashes::reserve(std::size_t machines) {
  own.reserve(machines);
  host.reserve(machines);
}

void NameHashes::add(const Machine& m) {
  const TextHash text = read_text(m.name);
  own.push_back(m.name.empty() ? 0 : text.hash | 1U);
  host.push_back((m.host_name.empty() && text.is_label ? text.hash : host_name_hash(m)) | 1U);
}

std::string full_name_of(const Lab& lab, const Machine& m) {
  std::string name = host_name_of(m);
  if (name.find('.') != std::string::npos || lab.facts.domain.empty()) return name;
  return name + "." + lab.facts.domain;
}

} // namespace snug
