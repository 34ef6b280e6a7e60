#pragma once
// Sizes typed by people, stored as whole MiB. IEC 80000-13: 1 GiB = 1024 MiB.

#include "core/base/result.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace snug {

inline constexpr std::int64_t kMibPerGib = 1024;
inline constexpr std::int64_t kMaxMib = 64LL * 1024 * 1024; // 64 TiB

// "4096", "4096 MiB", "4 GiB", "3.5g", "3,5 GiB", "1.5t", "512m". A bare number is MiB. One '.' or ',' is a
// decimal separator; two separators ("1.024,5") are refused, as is "1.024" followed by exactly three
// digits without a unit. The value must be a whole number of MiB after rounding to the nearest, and
// lie in 0 … kMaxMib. "GB" (10^9) is refused with the binary unit that is meant.
Result<std::int64_t> parse_mib(std::string_view);
// Shortest exact text that parse_mib reads back: "3.5 GiB", "4 GiB", "4097 MiB".
std::string mib_text(std::int64_t mib);

} // namespace snug
