#pragma once
// What overlaps on a drawing: the measure of DECISIONS 25 on the boxes that the layout gave.

#include "core/layout/drawing.h"

namespace snug::test {

// One sentence for each pair of cards that cut each other, wire through a card, label over another label or
// over a wire, and label that leaves the sheet or cuts the edge of a card. Lines of segments, risers, lines
// outside the frame, joints, pins and badges count as wires.
std::vector<std::string> overlaps(const Drawing&);

} // namespace snug::test
