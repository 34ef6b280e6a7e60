#include "tests/bench/figures.h"

#include <algorithm>
#include <set>

namespace snug::bench {

namespace {

std::int64_t count(const Analysis& a, std::string_view rule) {
  return std::count_if(a.findings().begin(), a.findings().end(),
                       [rule](const Finding& f) { return f.rule->id == rule; });
}

// Holders of an address beyond the first of their network.
std::int64_t addresses_twice(const AddressesInUse& addresses) {
  std::int64_t n = 0;
  for (const Conflicts::Run& run : addresses.equal()) {
    std::set<std::uint32_t> networks;
    for (const HeldAddress& h : addresses.all().subspan(run.first, run.count))
      n += h.domain != kNowhere && !networks.insert(h.domain).second ? 1 : 0;
  }
  return n;
}

} // namespace

Figures figures(const Analysis& a) {
  Figures out;
  for (const ExerciseBudgets& e : a.budgets())
    for (const MemoryBudget& m : e.memory)
      (m.of.kind == Kind::pc ? out.pc_headroom : out.inner_headroom) += m.headroom();
  out.addresses_twice = addresses_twice(a.addresses());
  out.macs_twice = count(a, "mac-twice");
  out.names_twice = count(a, "host-name-twice");
  for (const DiskBudget& d : a.budgets().front().disks)
    if (d.of.kind == Kind::volume) out.disk_expected += d.expected;
  return out;
}

} // namespace snug::bench
