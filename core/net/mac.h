#pragma once
// 48-bit MAC addresses (EUI-48), interface identifiers and RFC 4193 prefixes.

#include "core/base/result.h"
#include "core/net/prefix.h"

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

namespace snug {

class Mac {
 public:
  constexpr Mac() = default;
  constexpr explicit Mac(std::uint64_t bits48) : bits_(bits48 & 0xffff'ffff'ffffULL) {}
  constexpr std::uint64_t bits() const { return bits_; }
  constexpr bool is_group() const { return ((bits_ >> 40U) & 1U) != 0; }                // I/G bit
  constexpr bool is_locally_administered() const { return ((bits_ >> 41U) & 1U) != 0; } // U/L bit
  // Usable by one card: not all zero, not a group address.
  constexpr bool is_usable() const { return bits_ != 0 && !is_group(); }
  friend constexpr auto operator<=>(const Mac&, const Mac&) = default;

 private:
  std::uint64_t bits_ = 0;
};

// Accepts 00:00:5e:00:53:01, 00-00-5E-00-53-01, 0000.5e00.5301 and twelve digits. Output: lower case, colons.
// Does not allocate on success.
Result<Mac> parse_mac(std::string_view);
std::string to_text(const Mac&);
void append_text(std::string&, const Mac&);

// Deterministic MAC of a lab's uid, a seat and a card (DECISIONS 9): unicast, locally administered, second
// digit 2 (the quadrant for addresses that nobody assigned, IEEE Std 802c, RFC 8948 1, from memory). The
// first octet is never 02, where the registry has old assignments. About 2^43.9 values: two of 10,000 cards
// meet with a probability of 3 in a million.
Mac derived_mac(std::string_view lab_uid, std::uint32_t seat, std::uint32_t card_number);
// Modified EUI-64 interface identifier (RFC 4291 Appendix A): U/L bit inverted, ff:fe in the middle.
std::uint64_t modified_eui64(const Mac&);
// A /48 under fd00::/8 from the lab's uid: the low 40 bits of SHA-1 over the uid (RFC 4193 3.2.2, where the
// random uid stands in for time and EUI-64).
Prefix unique_local_prefix(std::string_view lab_uid);
// The sample algorithm of RFC 4193 3.2.2 itself: SHA-1 over the 64-bit NTP time and the EUI-64, both in
// network order; low 40 bits. Feed modified_eui64 of a MAC (the form of RFC 4291 Appendix A).
Prefix unique_local_prefix(std::uint64_t ntp_time, std::uint64_t eui64);
// 64-bit hash used for derived_mac: FNV-1a with a final mix; stable for ever.
std::uint64_t stable_hash(std::string_view);
// FNV-1a, 64 bits, as published (draft-eastlake-fnv).
std::uint64_t fnv1a(std::string_view);

} // namespace snug
