#pragma once
// A hand that does anything: clicks, drags, Esc in mid-drag, names typed in place, undo, redo.

#include "tests/support/random_lab.h"
#include "tests/window/hand.h"

namespace snug::test {

// One act with real events. Nothing it does opens a dialog.
void act_at_random(Random& random, Hand& hand);

} // namespace snug::test
