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

std::int64_t overhead(const Rules& rules, const MachineColumn& m) {
  const bool inner = m.carrier != kNowhere;
  const std::int64_t tables = page_tables(m.memory) * (m.hypervisor ? rules.hypervisor_page_tables : 1);
  return (inner ? rules.inner_fixed : rules.outer_fixed) +
         (inner ? rules.inner_per_processor : rules.outer_per_processor) * m.processors + tables;
}

} // namespace

std::int64_t page_tables(std::int64_t memory_mib) {
  return (memory_mib + kMemoryPerTable - 1) / kMemoryPerTable;
}

std::int64_t footprint(const Index& index, std::uint32_t machine_place) {
  return index.machines()[machine_place].footprint;
}

std::int64_t overhead(const Index& index, std::uint32_t machine_place) {
  return overhead(index.lab().rules, index.machines()[machine_place]);
}

std::int64_t takes(const Index& index, std::uint32_t machine_place) {
  return index.machines()[machine_place].memory + overhead(index, machine_place);
}

std::int64_t room_for_guest(const Index& index, const MemoryBudget& budget) {
  const Rules& rules = index.lab().rules;
  const bool inner = budget.of.kind == Kind::machine;
  const std::int64_t left = budget.headroom() - budget.keep_free -
                            (inner ? rules.inner_fixed : rules.outer_fixed) -
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

GuestCosts guest_costs(const Index& index) {
  const auto machines = index.machines();
  std::vector<std::uint32_t> slot(machines.size(), 0);
  GuestCosts out;
  out.hypervisors.reserve(index.hypervisors().size());
  for (const std::uint32_t h : index.hypervisors()) {
    const MachineColumn& c = machines[h];
    out.hypervisors.push_back({index.lab().machines[h].id, c.memory - c.footprint, c.processors});
    slot[h] = static_cast<std::uint32_t>(out.hypervisors.size());
  }
  const Rules& rules = index.lab().rules;
  out.guests.reserve(machines.size());
  out.takes.resize(machines.size());
  for (const std::uint32_t m : index.carriers_first()) {
    const MachineColumn& c = machines[m];
    const std::int64_t extra = overhead(rules, c);
    const std::int64_t own = c.hypervisor ? c.footprint : share_of(c.memory, c.expected_percent);
    if (c.hypervisor) out.carriers.push_back(static_cast<std::uint32_t>(out.guests.size()));
    out.takes[m] = c.memory + extra;
    out.guests.push_back({c.memory + extra, own + extra, c.processors, m,
                          c.carrier == kNowhere ? 0 : slot[c.carrier], slot[m]});
  }
  return out;
}

std::vector<Inside> insides(const GuestCosts& costs, std::span<const std::uint8_t> running) {
  std::vector<Inside> out(costs.hypervisors.size() + 1);
  for (std::size_t i = costs.guests.size(); i-- > 0;) {
    const GuestCost& g = costs.guests[i];
    if (!running[g.machine]) continue;
    Inside& carrier = out[g.carrier];
    carrier.taken += g.takes;
    // A hypervisor is expected to use its own part and its guests', never more than its memory.
    const std::int64_t guests = g.hypervisor == 0 ? 0 : out[g.hypervisor].expected;
    carrier.expected += std::min(g.expected + guests, g.takes);
    carrier.processors += g.processors;
  }
  return out;
}

std::vector<MemoryBudget> memory_budgets(const Pc& pc, const GuestCosts& costs,
                                         std::span<const Inside> inside) {
  std::vector<MemoryBudget> out;
  out.reserve(inside.size());
  out.push_back(
      {AnyId{Kind::pc, 0}, usable(pc) - reserved(pc), inside[0].taken, inside[0].expected, keep_free(pc)});
  for (const GuestCosts::Hypervisor& h : costs.hypervisors) {
    const Inside& own = inside[out.size()];
    out.push_back({h.id, h.memory, own.taken, own.expected, 0});
  }
  return out;
}

} // namespace snug
