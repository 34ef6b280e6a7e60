#pragma once
// What is said of an element of the picture to those who hear it.

#include "core/analyse/analyse.h"
#include "core/layout/drawing.h"

#include <QString>

namespace snug {

// The PC, networks outside, machines, cards and segments, in this order.
std::vector<AnyId> spoken_ids(const Lab&);
// "card 1 of deck-a on Steering", "deck-b, hypervisor".
QString spoken_name(const Analysis&, AnyId);
// What the picture says beside the name, and the findings about it that are not accepted.
QString spoken_description(const Analysis&, const Drawing&, AnyId, ExerciseId);
// Where it is drawn; a card that has no pin of its own is where its machine is.
Box spoken_box(const Lab&, const Drawing&, AnyId);

} // namespace snug
