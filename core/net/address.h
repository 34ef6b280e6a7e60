#pragma once
// IPv4 and IPv6 addresses as values. Text is strict: dotted decimal without leading zeros (RFC 1123 2.1,
// inet_pton), RFC 4291 2.2 for IPv6 input; output is canonical (RFC 5952).

#include "core/base/result.h"
#include "core/net/bits128.h"

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace snug {

enum class Family : std::uint8_t { v4, v6 };

// Ordered by family (IPv4 first), then numerically. Default: 0.0.0.0.
class Address {
 public:
  constexpr Address() = default;
  static constexpr Address v4(std::uint32_t host_order) { return Address(Family::v4, 0, host_order); }
  static constexpr Address v6(std::uint64_t high, std::uint64_t low) {
    return Address(Family::v6, high, low);
  }

  constexpr Family family() const { return family_; }
  constexpr bool is_v4() const { return family_ == Family::v4; }
  constexpr std::uint32_t as_u32() const { return static_cast<std::uint32_t>(low_); } // v4 only
  constexpr std::uint64_t high() const { return high_; }
  constexpr std::uint64_t low() const { return low_; }
  constexpr int bits() const { return is_v4() ? 32 : 128; }
  constexpr Bits128 value() const { return {high_, low_}; }
  // The address of a number; an IPv4 number must fit 32 bits.
  static constexpr Address of(Family f, Bits128 number) { return Address(f, number.high, number.low); }

  // The address n further (n may be negative); nothing when that leaves the family's range.
  std::optional<Address> plus(std::int64_t n) const;
  friend constexpr auto operator<=>(const Address&, const Address&) = default;

 private:
  constexpr Address(Family f, std::uint64_t h, std::uint64_t l) : family_(f), high_(h), low_(l) {}
  Family family_ = Family::v4;
  std::uint64_t high_ = 0;
  std::uint64_t low_ = 0;
};

// Refuses with a sentence that says which part is wrong and, where it can be told, what was meant. A zone
// index (RFC 4007 11), a prefix length, brackets and spaces are refused. Does not allocate on success.
Result<Address> parse_address(std::string_view);
// IPv6 as RFC 5952. An IPv4 address inside is dotted under ::ffff:0:0/96, 64:ff9b::/96 (RFC 6052) and in
// IPv4-compatible addresses (RFC 4291 2.5.5.1), as RFC 5952 5 recommends for well-known prefixes.
std::string to_text(const Address&);
void append_text(std::string&, const Address&);

} // namespace snug
