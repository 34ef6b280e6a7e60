#pragma once
// A part of a person's own on its way to the picture.

#include "ui/canvas/gesture.h"

namespace snug {

// The machines of `part`, which is a lab of its own whose title is said.
std::unique_ptr<Gesture> place_own_part(Session&, const Lab& part);
// Machines copied elsewhere, once, under their names.
std::unique_ptr<Gesture> place_copies(Session&, Lab copied);

} // namespace snug
