#include "core/budget/verdict.h"

#include <algorithm>

namespace snug {

ExerciseVerdict verdict_of(const ExerciseBudgets& b) {
  ExerciseVerdict out;
  const auto take = [&out](Verdict v, AnyId of) {
    if (v < out.verdict || v == Verdict::fits) return;
    if (v > out.verdict) out.where.clear();
    out.verdict = v;
    if (std::find(out.where.begin(), out.where.end(), of) == out.where.end()) out.where.push_back(of);
  };
  for (const MemoryBudget& m : b.memory) take(m.verdict(), m.of);
  for (const DiskBudget& d : b.disks) take(d.verdict(), d.of);
  for (const ProcessorBudget& p : b.processors)
    take(p.verdict() == Verdict::over ? Verdict::tight : Verdict::fits, p.of);
  return out;
}

} // namespace snug
