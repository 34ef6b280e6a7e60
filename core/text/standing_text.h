#pragma once
// How an exercise stands, in a word and in a sentence.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template standing_fits{"standing-fits", "fits"};
inline constexpr Template standing_tight{"standing-tight", "tight"};
inline constexpr Template standing_over{"standing-over", "over"};
inline constexpr Template standing_tight_disks{"standing-tight-disks", "disk tight"};
inline constexpr Template standing_tight_processors{"standing-tight-processors", "processors tight"};
inline constexpr Template standing_over_disks{"standing-over-disks", "disk over"};
inline constexpr Template standing_errors{"standing-errors", "{0} errors", "{0} error"};
inline constexpr Template standing_cautions{"standing-cautions", "{0} cautions", "{0} caution"};
inline constexpr Template standing_over_why{"standing-over-why",
                                            "More is asked than there is: {0}. Leave some machines off."};
inline constexpr Template standing_over_disks_why{
    "standing-over-disks-why",
    "The disks need more room than there is: {0}. Make some smaller, or put them elsewhere."};
inline constexpr Template standing_tight_why{"standing-tight-why", "It runs, but little is left: {0}."};
inline constexpr Template standing_tight_disks_why{
    "standing-tight-disks-why", "It runs, but there is no room for disks that fill up: {0}."};
inline constexpr Template standing_tight_processors_why{"standing-tight-processors-why",
                                                        "It runs, but many processors share few: {0}."};
inline constexpr Template standing_errors_why{"standing-errors-why", "{0} errors, the first: {1}.",
                                              "{0} error: {1}."};
inline constexpr Template standing_cautions_why{"standing-cautions-why", "{0} cautions, the first: {1}.",
                                                "{0} caution: {1}."};
inline constexpr Template standing_good_why{
    "standing-good-why", "What is on fits into the PC, and the checks found no error and no caution."};

} // namespace snug::text
