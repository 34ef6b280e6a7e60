#include "tests/bench/figures.h"

#include <algorithm>

namespace snug::bench {

namespace {

std::int64_t count(const Analysis& a, std::string_view rule) {
  return std::count_if(a.findings().begin(), a.findings().end(),
                       [rule](const Finding& f) { return f.rule->id == rule; });
}

} // namespace

Figures figures(const Analysis& a) {
  Figures out;
  for (const ExerciseBudgets& e : a.budgets())
    for (const MemoryBudget& m : e.memory)
      (m.of.kind == Kind::pc ? out.pc_headroom : out.inner_headroom) += m.headroom();
  out.addresses_twice = count(a, "address-twice");
  out.macs_twice = count(a, "mac-twice");
  out.names_twice = count(a, "host-name-twice");
  for (const DiskBudget& d : a.budgets().front().disks)
    if (d.of.kind == Kind::volume) out.disk_expected += d.expected;
  return out;
}

} // namespace snug::bench
