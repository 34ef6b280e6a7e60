#include "core/budget/memory.h"

#include "core/base/size.h"
#include "core/budget/defaults.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::int64_t kPageBytes = 4096;
constexpr std::int64_t kEntryBytes = 8;
constexpr std::int64_t kMemoryPerTable = kPageBytes / kEntryBytes; // MiB of memory for one MiB of tables

std::int64_t share_of(std::int64_t whole, std::int64_t percent) { return (whole * percent + 99) / 100; }

} // namespace

std::int64_t page_tables(std::int64_t memory_mib) {
  return (memory_mib + kMemoryPerTable - 1) / kMemoryPerTable;
}

std::int64_t footprint(const Index& index, std::uint32_t machine_place) {
  const Lab& lab = index.lab();
  const Machine& m = lab.machines[machine_place];
  if (m.footprint) return *m.footprint;
  const std::uint32_t r = index.machines()[machine_place].role;
  if (r == kNowhere) return lab.rules.default_footprint;
  const Role& role = lab.roles[r];
  const std::int64_t own = lab.facts.sizes == SizeSet::lean ? role.lean_footprint : role.current_footprint;
  return own > 0 ? own : lab.rules.default_footprint;
}

std::int64_t overhead(const Index& index, std::uint32_t machine_place) {
  const Rules& rules = index.lab().rules;
  const MachineColumn& m = index.machines()[machine_place];
  const bool inner = m.carrier != kNowhere;
  const std::int64_t tables = page_tables(m.memory) * (m.hypervisor ? rules.hypervisor_page_tables : 1);
  return (inner ? rules.inner_fixed : rules.outer_fixed) +
         (inner ? rules.inner_per_processor : rules.outer_per_processor) * m.processors + tables;
}

std::int64_t takes(const Index& index, std::uint32_t machine_place) {
  return index.machines()[machine_place].memory + overhead(index, machine_place);
}

std::int64_t room_for_guest(const Index& index, const MemoryBudget& budget) {
  const Rules& rules = index.lab().rules;
  const bool inner = budget.of.kind == Kind::machine;
  const std::int64_t left = budget.headroom() - (inner ? rules.inner_fixed : rules.outer_fixed) -
                            (inner ? rules.inner_per_processor : rules.outer_per_processor);
  if (left <= 0) return 0;
  return left - (left + kMemoryPerTable) / (kMemoryPerTable + 1);
}

MemoryBudget on_pc_of(std::int64_t installed_mib, const ExerciseBudgets& exercise) {
  MemoryBudget b = exercise.memory.front();
  b.budget = installed_mib - usual_reserve(installed_mib);
  b.keep_free = usual_keep_free(installed_mib);
  return b;
}

std::vector<GuestCost> guest_costs(const Index& index) {
  std::vector<GuestCost> costs(index.machines().size());
  for (std::uint32_t m = 0; m < costs.size(); ++m) {
    const MachineColumn& c = index.machines()[m];
    const std::int64_t extra = overhead(index, m);
    costs[m].takes = c.memory + extra;
    costs[m].footprint = c.hypervisor ? footprint(index, m) : 0;
    costs[m].expected = extra + (c.hypervisor ? costs[m].footprint : share_of(c.memory, c.expected_percent));
  }
  return costs;
}

std::vector<MemoryBudget> memory_budgets(const Index& index, std::span<const GuestCost> costs,
                                         std::span<const std::uint8_t> running) {
  const auto machines = index.machines();
  const std::size_t count = machines.size();
  struct Inside {
    std::int64_t taken = 0;
    std::int64_t expected = 0;
  };
  std::vector<Inside> inside(count + 1); // the last: the PC
  const auto order = index.carriers_first();
  for (auto it = order.rbegin(); it != order.rend(); ++it) {
    const std::uint32_t m = *it;
    if (!running[m]) continue;
    const MachineColumn& c = machines[m];
    Inside& carrier = inside[c.carrier == kNowhere ? count : c.carrier];
    carrier.taken += costs[m].takes;
    // A hypervisor is expected to use its own part and its guests', never more than its memory.
    carrier.expected += std::min(costs[m].expected + inside[m].expected, costs[m].takes);
  }
  const Pc& pc = index.lab().pc;
  std::vector<MemoryBudget> out;
  out.reserve(index.hypervisors().size() + 1);
  out.push_back({AnyId{Kind::pc, 0}, usable(pc) - reserved(pc), inside[count].taken, inside[count].expected,
                 keep_free(pc)});
  for (const std::uint32_t h : index.hypervisors())
    out.push_back({index.lab().machines[h].id, machines[h].memory - costs[h].footprint, inside[h].taken,
                   inside[h].expected, 0});
  return out;
}

} // namespace snug
