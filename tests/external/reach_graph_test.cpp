// Who can reach whom against breadth-first searches of Boost.Graph (Boost 1.74, BSL-1.0) on the graph of
// systems and layer-2 networks.

#include "tests/bench/reach_graph.h"

#include "core/reach/pairs.h"
#include "tests/bench/routed_lab.h"
#include "tests/support/network_lab.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

// Nothing arrives where no cable leads.
TEST(ReachGraph, NothingArrivesWhereNoCableLeads) {
  std::size_t arriving = 0, apart = 0;
  for (int i = 0, n = scaled(3'000); i < n; ++i) {
    Random random(static_cast<std::uint64_t>(i));
    const Lab lab = network_lab(random, {16, 6});
    const Index index(lab);
    const AddressesInUse addresses(index);
    Reach reach(index, addresses);
    const ReachPairs pairs(reach);
    bench::ReachGraph graph(reach.network());
    for (std::uint32_t a = 0; a < graph.nodes(); ++a) {
      const std::vector<std::uint8_t> there = graph.from(a);
      for (std::uint32_t b = 0; b < graph.nodes(); ++b) {
        if (a == b) continue;
        const bool arrives = pairs.verdict(a, b) != Reached::does_not_reach;
        ASSERT_TRUE(there[b] != 0 || !arrives) << i << ": " << a << " to " << b;
        arriving += arrives ? 1 : 0;
        apart += there[b] == 0 ? 1 : 0;
      }
    }
  }
  EXPECT_GT(arriving, 1000U);
  EXPECT_GT(apart, 1000U);
}

// Where every route is there and right, both say the same.
TEST(ReachGraph, AWellRoutedLabReachesAllThatCablesReach) {
  const Lab lab = bench::routed_lab(400);
  const Index index(lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses);
  const ReachPairs pairs(reach);
  EXPECT_EQ(pairs.asked(), 0U);
  bench::ReachGraph graph(reach.network());
  for (std::uint32_t a = 0; a < lab.machines.size(); ++a) {
    const std::vector<std::uint8_t> there = graph.from(a);
    for (std::uint32_t b = 0; b < lab.machines.size(); ++b) {
      if (a == b) continue;
      ASSERT_EQ(pairs.verdict(a, b), there[b] != 0 ? Reached::reaches : Reached::does_not_reach)
          << lab.machines[a].name << " to " << lab.machines[b].name;
    }
  }
}

} // namespace
} // namespace snug::test
