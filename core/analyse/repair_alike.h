#pragma once
// The findings of one rule repaired one after the other, as one step.

#include "core/analyse/analyse.h"

namespace snug {

struct AlikeRepaired {
  Edit edit;             // empty: none could be repaired
  std::size_t count = 0; // of findings that were repaired
};

// Those that hold in the exercise (none: everything on) and are not accepted, each with the first of its
// repairs on the lab as it is after the ones before; those that only come up meanwhile too. At most `most`.
AlikeRepaired repair_alike(const Analysis&, std::string_view rule, ExerciseId exercise,
                           std::size_t most = 200);

// How many findings that are.
std::size_t alike(const Analysis&, std::string_view rule, ExerciseId exercise);

} // namespace snug
