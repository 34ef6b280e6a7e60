#pragma once
// How an exercise stands (JOB: simple first, one verdict per exercise): the worst of its budgets and of what
// the checks found about it.

#include "core/analyse/analyse.h"

namespace snug {

enum class Standing : std::uint8_t { good, caution, error };

struct ExerciseStanding {
  ExerciseId exercise; // none: everything on
  Standing standing = Standing::good;
  Verdict budgets = Verdict::fits; // of memory, processors and disks alone
  std::vector<AnyId> where;        // what those are about; empty when they fit
  std::int64_t errors = 0;         // findings that hold in it and are not accepted
  std::int64_t cautions = 0;
  Message word;             // "fits", "tight", "disk over", "2 errors", "1 caution"
  std::vector<Message> why; // a sentence each, the worst first; never empty
};

// Everything on first, then the exercises in the lab's order, as Analysis::budgets().
std::vector<ExerciseStanding> standings(const Analysis&);

} // namespace snug
