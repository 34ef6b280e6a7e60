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
Result<Mac> parse_mac(std::string_view);
std::string to_text(const Mac&);

// Deterministic unicast, locally administered MAC (U/L bit 1, I/G bit 0) of a lab's uid, a seat and a card
// (DECISIONS 9).
Mac derived_mac(std::string_view lab_uid, std::uint32_t seat, std::uint32_t card_number);
// Modified EUI-64 interface identifier (RFC 4291 Appendix A): U/L bit inverted, ff:fe in the middle.
std::uint64_t modified_eui64(const Mac&);
// A /48 under fd00::/8 from the lab's uid: 40 pseudo-random bits of a hash (RFC 4193 3.2.2; the uid stands in
// for time and EUI-64, see the source).
Prefix unique_local_prefix(std::string_view lab_uid);
// The sample algorithm of RFC 4193 3.2.2 itself: SHA-1 over NTP time and EUI-64. EUI-64 without U/L
// inversion is fed (the form RFC 4193 refers to with RFC 3513's "EUI-64 identifier"; see shared checks).
Prefix unique_local_prefix(std::uint64_t ntp_time, std::uint64_t eui64);
// 64-bit hash used above, FNV-1a with a final mix; stable for ever.
std::uint64_t stable_hash(std::string_view);

} // namespace snug
