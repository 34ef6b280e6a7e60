#include "core/budget/processors.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::int64_t kCore = 100;
// Ratios stop here: far beyond any use, and two of them still multiply.
constexpr std::int64_t kMostRatio = 1'000'000'000;

std::int64_t ratio_of(std::int64_t n, std::int64_t by) {
  if (n == 0) return 0;
  return by > 0 ? std::min((n + by - 1) / by, kMostRatio) : kMostRatio;
}

} // namespace

std::int64_t processor_power(const Pc& pc, const Rules& rules) {
  const std::int64_t efficiency = std::clamp(pc.efficiency_cores, 0, pc.cores);
  const std::int64_t second_threads = std::max(0, pc.threads - pc.cores);
  return (pc.cores - efficiency) * kCore + efficiency * rules.efficiency_core_percent +
         second_threads * rules.second_thread_percent;
}

std::vector<ProcessorBudget> processor_budgets(const Index& index, std::span<const std::uint8_t> running) {
  const auto machines = index.machines();
  const std::size_t count = machines.size();
  std::vector<std::int64_t> inside(count + 1, 0); // the last: the PC
  for (std::size_t m = 0; m < count; ++m)
    if (running[m])
      inside[machines[m].carrier == kNowhere ? count : machines[m].carrier] += machines[m].processors;

  const Lab& lab = index.lab();
  const auto budget = [&](AnyId of, std::size_t place, std::int64_t power, std::int64_t limit) {
    ProcessorBudget b{of, inside[place], power, 0, limit, 0};
    b.product = b.ratio = ratio_of(b.running * kCore * kCore, power);
    return b;
  };
  std::vector<ProcessorBudget> out;
  out.reserve(index.hypervisors().size() + 1);
  out.push_back(
      budget(AnyId{Kind::pc, 0}, count, processor_power(lab.pc, lab.rules), lab.rules.pc_processor_ratio));
  std::vector<std::uint32_t> slot(count, 0);
  for (const std::uint32_t h : index.hypervisors()) {
    slot[h] = static_cast<std::uint32_t>(out.size());
    out.push_back(
        budget(lab.machines[h].id, h, machines[h].processors * kCore, lab.rules.inner_processor_ratio));
  }
  for (const std::uint32_t m : index.carriers_first()) {
    if (!machines[m].hypervisor) continue;
    const std::uint32_t above = machines[m].carrier == kNowhere ? 0 : slot[machines[m].carrier];
    out[slot[m]].product = ratio_of(out[slot[m]].ratio * out[above].product, kCore);
  }
  return out;
}

} // namespace snug
