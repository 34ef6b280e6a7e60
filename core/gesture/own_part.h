#pragma once
// Machines as a part of a person's own, and such a part on the picture.

#include "core/gesture/clip.h"

namespace snug {

// The machines among `ids` with what copy_machines() takes along, as a lab whose title is `name`. Refused
// where no machine is among them.
Result<Lab> make_part(const Lab&, std::span<const AnyId> ids, std::string_view name);

// Puts a part's machines down `count` times (1 … kMostAtOnce), side by side, as paste_machines() would. With
// a segment each outermost machine that has no card there gets one. Refused: a part without machines, a
// carrier that is no hypervisor.
Result<Pasted> place_part(const Lab&, const Lab& part, int count, const Spot&, ExerciseId current = {},
                          SegmentId plugged = {});

} // namespace snug
