#include "core/net/mac.h"
#include "core/net/sha1.h"

namespace snug {

namespace {

// A bijection in which every input bit moves about half of the output bits (the finalizer of splitmix64).
std::uint64_t mixed(std::uint64_t h) {
  h = (h ^ (h >> 30U)) * 0xbf58476d1ce4e5b9ULL;
  h = (h ^ (h >> 27U)) * 0x94d049bb133111ebULL;
  return h ^ (h >> 31U);
}

void append_network_order(std::string& out, std::uint64_t value) {
  for (unsigned shift = 64; shift > 0;) {
    shift -= 8;
    out += static_cast<char>((value >> shift) & 0xffU);
  }
}

Prefix unique_local_from(std::string_view hashed) {
  const Sha1Digest digest = sha1(hashed);
  std::uint64_t high = 0xfd;
  for (std::size_t i = digest.size() - 5; i < digest.size(); ++i) high = (high << 8U) | digest[i];
  return Prefix::of(Address::v6(high << 16U, 0), 48);
}

} // namespace

std::uint64_t fnv1a(std::string_view text) {
  std::uint64_t h = 0xcbf29ce484222325ULL;
  for (const char c : text) h = (h ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
  return h;
}

std::uint64_t stable_hash(std::string_view text) { return mixed(fnv1a(text)); }

Mac derived_mac(std::string_view lab_uid, std::uint32_t seat, std::uint32_t card_number) {
  const std::uint64_t place = (static_cast<std::uint64_t>(seat) << 32U) | card_number;
  const std::uint64_t h = mixed(stable_hash(lab_uid) ^ mixed(place + 0x9e3779b97f4a7c15ULL));
  const std::uint64_t first_octet = 0x12 + 0x10 * ((h >> 40U) % 15); // 12, 22 … f2
  return Mac((first_octet << 40U) | (h & 0xff'ffff'ffffULL));
}

std::uint64_t modified_eui64(const Mac& mac) {
  const std::uint64_t bits = mac.bits() ^ 0x0200'0000'0000ULL;
  return (bits >> 24U << 40U) | 0xff'fe00'0000ULL | (bits & 0xff'ffffU);
}

Prefix unique_local_prefix(std::string_view lab_uid) { return unique_local_from(lab_uid); }

Prefix unique_local_prefix(std::uint64_t ntp_time, std::uint64_t eui64) {
  std::string bytes;
  append_network_order(bytes, ntp_time);
  append_network_order(bytes, eui64);
  return unique_local_from(bytes);
}

} // namespace snug
