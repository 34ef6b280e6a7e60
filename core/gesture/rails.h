#pragma once
// Rails under the hand: their order, and what leads out of the frame.

#include "core/edit/build.h"

#include <span>

namespace snug {

// Segments as the picture shows them, from the top.
std::vector<SegmentId> rails_in_order(const Lab&);
// Puts a rail before another (none: at the end). Empty when it stands there.
Edit move_rail(const Lab&, SegmentId, SegmentId before);
// Earlier or later by one among its like: a segment's rail, or a machine in its band. Empty at the end.
Edit shift(const Lab&, AnyId segment_or_machine, bool later);

// What a rail's left end does. Isolated and NAT segments keep their prefix, or get one from the numbering
// scheme; a bridged one takes its LAN's. `lan` none: the first one; refuses bridging where the plan has none.
// Empty when it is so already.
Result<Edit> lead_out(const Lab&, SegmentId, SegmentKind, LanId lan = {});

} // namespace snug
