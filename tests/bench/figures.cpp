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
    for (const HeldAddress& h : addresses.all().part(run.first, run.count))
      n += h.domain != kNowhere && !networks.insert(h.domain).second ? 1 : 0;
  }
  return n;
}

void add(const ExerciseBudgets& e, Figures& out) {
  out.running += static_cast<std::int64_t>(e.running_count);
  for (const MemoryBudget& m : e.memory) {
    const bool pc = m.of.kind == Kind::pc;
    (pc ? out.pc_headroom : out.inner_headroom) += m.headroom();
    (pc ? out.pc_expected : out.inner_expected) += m.expected;
  }
  for (const ProcessorBudget& p : e.processors) out.processors += p.product;
  for (const DiskBudget& d : e.disks) {
    out.disk_expected += d.expected;
    out.disk_worst += d.worst;
  }
  for (const SegmentBudget& s : e.segments) out.segment_memory += s.memory;
}

} // namespace

Figures figures(const Analysis& a) {
  Figures out;
  for (const ExerciseBudgets& e : a.budgets()) add(e, out);
  out.addresses_twice = addresses_twice(a.addresses());
  out.macs_twice = count(a, "mac-twice");
  out.names_twice = count(a, "host-name-twice");
  return out;
}

} // namespace snug::bench
