#include "core/budget/verdict.h"

#include <algorithm>

namespace snug {

ExerciseVerdict verdict_of(const ExerciseBudgets& b) {
  ExerciseVerdict out;
  const auto take = [&out](Verdict v, AnyId of, bool ExerciseVerdict::*what) {
    if (v < out.verdict || v == Verdict::fits) return;
    if (v > out.verdict) out = {v, {}};
    out.*what = true;
    if (std::find(out.where.begin(), out.where.end(), of) == out.where.end()) out.where.push_back(of);
  };
  for (const MemoryBudget& m : b.memory) take(m.verdict(), m.of, &ExerciseVerdict::memory);
  for (const DiskBudget& d : b.disks) take(d.verdict(), d.of, &ExerciseVerdict::disks);
  for (const ProcessorBudget& p : b.processors)
    take(p.verdict() == Verdict::over ? Verdict::tight : Verdict::fits, p.of, &ExerciseVerdict::processors);
  return out;
}

} // namespace snug
