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

std::vector<ProcessorBudget> processor_budgets(const Lab& lab, const GuestCosts& costs,
                                               std::span<const Inside> inside) {
  std::vector<ProcessorBudget> out;
  out.reserve(inside.size());
  const auto add = [&](AnyId of, std::int64_t power, std::int64_t limit) {
    ProcessorBudget b{of, inside[out.size()].processors, power, 0, limit, 0};
    b.product = b.ratio = ratio_of(b.running * kCore * kCore, power);
    out.push_back(b);
  };
  add(AnyId{Kind::pc, 0}, processor_power(lab.pc, lab.rules), lab.rules.pc_processor_ratio);
  for (const GuestCosts::Hypervisor& h : costs.hypervisors)
    add(h.id, h.processors * kCore, lab.rules.inner_processor_ratio);
  for (const std::uint32_t place : costs.carriers) {
    const GuestCost& g = costs.guests[place];
    out[g.hypervisor].product = ratio_of(out[g.hypervisor].ratio * out[g.carrier].product, kCore);
  }
  return out;
}

} // namespace snug
