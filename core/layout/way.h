#pragma once
// The lines of a drawing along which a packet goes.

#include "core/layout/drawing.h"
#include "core/model/index.h"

#include <span>

namespace snug {

struct WayLine {
  Point from, to;
  friend bool operator==(const WayLine&, const WayLine&) = default;
};
// What a packet passes are machines, cards and segments. Wires of those cards, of an inner guest's card the
// wires of its hypervisors that carry its segment, the line to a LAN or a translator and to the PC's socket
// (the PC stands before its segment), and the rails between the ends of all these. Nothing for cards that are
// not drawn.
std::vector<WayLine> lines_of_way(const Index&, const Drawing&, std::span<const AnyId> passed);

} // namespace snug
