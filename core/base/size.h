#pragma once
// Sizes typed by people, stored as whole MiB. IEC 80000-13: 1 GiB = 1024 MiB.

#include "core/base/result.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace snug {

inline constexpr std::int64_t kBytesPerMib = 1024 * 1024;
inline constexpr std::int64_t kMibPerGib = 1024;
inline constexpr std::int64_t kMibPerTib = 1024 * kMibPerGib;
inline constexpr std::int64_t kMaxMib = 64 * kMibPerTib;

// "4096", "4096 MiB", "4 GiB", "3.5g", "3,5 GiB", "1.5t", "512m"; letter case and spaces (also no-break) do
// not matter. A bare number is MiB. One '.' or ',' is a decimal separator with 1 … 12 digits after it; two
// separators ("1.024,5") are refused, as is a fraction without a unit ("1.024": grouped or not?). The value
// is rounded to the nearest whole MiB (half up) and lies in 0 … kMaxMib. "GB" (10^9) is refused with the
// binary unit that is meant.
Result<std::int64_t> parse_mib(std::string_view);
// Exact text that parse_mib reads back, the shorter of GiB (from 1 GiB on) and MiB: "3.5 GiB", "4 GiB",
// "4097 MiB". `mib` is in 0 … kMaxMib.
std::string mib_text(std::int64_t mib);

} // namespace snug
