#include "core/budget/expected.h"

#include "core/budget/memory.h"

#include <algorithm>

namespace snug {

std::int64_t expected_of(const Index& index, const ExerciseBudgets& budgets, std::uint32_t machine_place) {
  if (!budgets.running[machine_place]) return 0;
  const MachineColumn& m = index.machines()[machine_place];
  const std::int64_t extra = overhead(index, machine_place);
  if (!m.hypervisor) return (m.memory * m.expected_percent + 99) / 100 + extra;
  const AnyId id = index.lab().machines[machine_place].id;
  const auto own = std::find_if(budgets.memory.begin(), budgets.memory.end(),
                                [id](const MemoryBudget& b) { return b.of == id; });
  return std::min(m.footprint + own->expected + extra, m.memory + extra);
}

} // namespace snug
