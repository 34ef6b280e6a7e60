#pragma once
// 128-bit unsigned arithmetic, modulo 2^128, in two halves (no compiler extension is needed).

#include <compare>
#include <cstdint>

namespace snug {

struct Bits128 {
  std::uint64_t high = 0;
  std::uint64_t low = 0;

  // The lowest n bits set, 0 ≤ n ≤ 128.
  static constexpr Bits128 ones(int n) {
    constexpr std::uint64_t kAll = ~std::uint64_t{0};
    if (n <= 0) return {0, 0};
    if (n <= 64) return {0, kAll >> static_cast<unsigned>(64 - n)};
    return {kAll >> static_cast<unsigned>(128 - n), kAll};
  }
  // 2^n, 0 ≤ n < 128.
  static constexpr Bits128 power(int n) {
    constexpr std::uint64_t kOne = 1;
    return n < 64 ? Bits128{0, kOne << static_cast<unsigned>(n)}
                  : Bits128{kOne << static_cast<unsigned>(n - 64), 0};
  }
  constexpr bool fits_int64() const { return high == 0 && low <= static_cast<std::uint64_t>(INT64_MAX); }
  constexpr std::int64_t saturated() const {
    return fits_int64() ? static_cast<std::int64_t>(low) : INT64_MAX;
  }

  friend constexpr auto operator<=>(const Bits128&, const Bits128&) = default;
  friend constexpr Bits128 operator&(Bits128 a, Bits128 b) { return {a.high & b.high, a.low & b.low}; }
  friend constexpr Bits128 operator|(Bits128 a, Bits128 b) { return {a.high | b.high, a.low | b.low}; }
  friend constexpr Bits128 operator^(Bits128 a, Bits128 b) { return {a.high ^ b.high, a.low ^ b.low}; }
  constexpr Bits128 operator~() const { return {~high, ~low}; }
  friend constexpr Bits128 operator+(Bits128 a, Bits128 b) {
    const std::uint64_t low = a.low + b.low;
    return {a.high + b.high + (low < a.low ? 1U : 0U), low};
  }
  friend constexpr Bits128 operator-(Bits128 a, Bits128 b) {
    return {a.high - b.high - (a.low < b.low ? 1U : 0U), a.low - b.low};
  }
};

} // namespace snug
