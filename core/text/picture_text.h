#pragma once
// Sentences about pictures that cannot be made.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template picture_scale{"picture-scale", "The scale {0} % is not between 10 % and 1000 %"};
inline constexpr Template picture_large{
    "picture-large",
    "The picture would be {0} by {1} pixels, more than this program paints (64 million in all); "
    "use a scale of at most {2} %, or write SVG or PDF, which have no pixels"};
inline constexpr Template picture_huge{
    "picture-huge",
    "The picture would be {0} by {1} pixels, more than this program paints (64 million in all), "
    "even at the smallest scale; write SVG, which has no pixels"};
inline constexpr Template picture_memory{"picture-memory",
                                         "There is not enough memory for a picture of {0} by {1} pixels"};
inline constexpr Template picture_writer{"picture-writer", "The picture could not be written as {0}"};

} // namespace snug::text
