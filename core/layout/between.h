#pragma once
// Pictures on the way from one drawing to another, for a short movement that eyes can follow.

#include "core/layout/drawing.h"

namespace snug {

inline constexpr int kArrived = 1000;

// `to`, with every shape that `from` has too moved back towards where it was there: 0 is there, kArrived is
// `to` itself. Shapes are the same if they are of one element, part and kind and stand as far down in the
// list of those; where the lists differ in length they are at their end at once. Hits and groups are those of
// `to`.
Drawing between(const Drawing& from, const Drawing& to, int permille);

} // namespace snug
