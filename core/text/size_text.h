#pragma once
// Sentences about sizes typed by people.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template size_empty{"size-empty", "a size is missing: write one like 4 GiB or 512 MiB"};
inline constexpr Template size_number{
    "size-number", "\"{0}\" does not start with a number: sizes look like 4 GiB or 512 MiB"};
inline constexpr Template size_negative{"size-negative", "\"{0}\" is negative: a size is zero or more"};
inline constexpr Template size_separators{
    "size-separators", "\"{0}\" has more than one separator: write it without grouping, like {1}"};
inline constexpr Template size_fraction_digits{"size-fraction-digits",
                                               "\"{0}\" needs a digit on both sides of the separator"};
inline constexpr Template size_fraction_long{
    "size-fraction-long", "\"{0}\" has {1} digits after the separator: at most {2} are read"};
inline constexpr Template size_thousand_or_fraction{
    "size-thousand-or-fraction",
    "\"{0}\" can be read in two ways: write {1} for {2}, or give the unit, like {3} GiB"};
inline constexpr Template size_fraction_unit{
    "size-fraction-unit", "\"{0}\" has a fraction but no unit: write {0} GiB or whole MiB"};
inline constexpr Template size_power_of_ten{
    "size-power-of-ten", "\"{0}\": {1} counts in powers of ten, sizes here in powers of two: write {2} if "
                         "that is meant, or {3} for exactly that many bytes"};
inline constexpr Template size_unit{"size-unit", "\"{0}\": {1} is not a unit of size: use MiB, GiB or TiB"};
inline constexpr Template size_large{"size-large",
                                     "\"{0}\" is more than {1}, the largest size that can be planned"};

} // namespace snug::text
