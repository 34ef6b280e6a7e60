#pragma once
// One verdict per exercise (JOB: simple first), and where it comes from.

#include "core/budget/budget.h"

namespace snug {

struct ExerciseVerdict {
  Verdict verdict = Verdict::fits;
  std::vector<AnyId> where; // what is over, or tight; empty when everything fits; each once
  bool memory = false, disks = false, processors = false; // what of those is
};

// Over: memory of the PC or of a hypervisor, or what a store is expected to hold. Tight: the PC's headroom
// below what it keeps free, a store's worst case, or more running processors than the rules advise.
ExerciseVerdict verdict_of(const ExerciseBudgets&);

} // namespace snug
