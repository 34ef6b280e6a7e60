#pragma once
// What rules look at: the lab, its index, budgets of every exercise, the addresses in use
// and who reaches whom.

#include "core/addressing/in_use.h"
#include "core/budget/budget.h"
#include "core/findings/finding.h"
#include "core/reach/by_exercise.h"

namespace snug {

struct Context {
  const Lab& lab;
  const Index& index;
  std::span<const ExerciseBudgets> budgets; // everything on first, then lab.exercises in order
  const AddressesInUse& addresses;
  ReachByExercise* reach = nullptr; // for the rules about reach: never null

  // As name_of(lab, id), without searching the lab.
  std::string name(AnyId id) const;
};

} // namespace snug
