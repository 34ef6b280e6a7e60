#pragma once
// What a change would bring, in the words that stand at the pointer while something is dragged.

#include "core/analyse/analyse.h"

namespace snug {

// Sentences about carriers whose headroom changes ("deck-a then has 4.9 GiB free", the PC last), and about
// findings that would come or go in this exercise (none: everything on); the most important first. Empty when
// nothing of this changes. At most `most` of each,
// then how many more there are.
std::vector<Message> consequences(const Analysis& now, const Analysis& then, ExerciseId exercise,
                                  std::size_t most = 3);

} // namespace snug
