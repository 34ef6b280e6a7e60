// All pairs of a large routed lab against breadth-first searches of Boost.Graph (PERFORMANCE 3).

#include "core/base/heap.h"
#include "core/reach/pairs.h"
#include "tests/bench/measure.h"
#include "tests/bench/reach_graph.h"
#include "tests/bench/routed_lab.h"

#include <numeric>

namespace snug::bench {
namespace {

struct Routed {
  explicit Routed(std::size_t machines)
      : lab(routed_lab(machines)), index(lab), addresses(index), reach(index, addresses),
        graph(reach.network()) {
    for (std::uint32_t c = 0; c < reach.classes().size(); ++c)
      fronts.push_back(reach.classes().members(c).front());
  }
  Lab lab;
  Index index;
  AddressesInUse addresses;
  Reach reach;
  ReachGraph graph;
  std::vector<std::uint32_t> fronts;
};

constexpr std::int32_t kSmall = 84;

void closure(benchmark::State& state, std::size_t n) {
  const Routed r(n);
  const ReachWays ways(r.reach.network(), r.fronts, kSmall);
  for (auto _ : state) {
    const Deliveries d(ways);
    benchmark::DoNotOptimize(d.all_sure());
  }
}

// One search, from the first host.
void search(benchmark::State& state, std::size_t n) {
  Routed r(n);
  const auto last = static_cast<std::uint32_t>(r.lab.machines.size() - 1);
  for (auto _ : state) benchmark::DoNotOptimize(r.graph.from(last).size());
}

std::int64_t count(const ReachPairs& pairs) {
  std::int64_t sum = 0;
  const ReachClasses& classes = pairs.classes();
  for (std::uint32_t a = 0; a < classes.size(); ++a)
    for (std::uint32_t b = 0; b < classes.size(); ++b) {
      const auto from = static_cast<std::int64_t>(classes.members(a).size());
      const auto to = static_cast<std::int64_t>(classes.members(b).size());
      if (pairs.of_classes(a, b) == Reached::reaches) sum += from * (a == b ? to - 1 : to);
    }
  return sum;
}

void matrix(benchmark::State& state, std::size_t n) {
  Routed r(n);
  for (auto _ : state) {
    const ReachPairs pairs(r.reach);
    benchmark::DoNotOptimize(pairs.asked());
  }
  state.counters["result"] = static_cast<double>(count(ReachPairs(r.reach)));
}

// From the lab alone: index, addresses, network, classes and all pairs.
void matrix_of_lab(benchmark::State& state, std::size_t n) {
  const Lab lab = routed_lab(n);
  for (auto _ : state) {
    const Index index(lab);
    const AddressesInUse addresses(index);
    Reach reach(index, addresses);
    benchmark::DoNotOptimize(ReachPairs(reach).asked());
  }
  const Index index(lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses);
  state.counters["result"] = static_cast<double>(count(ReachPairs(reach)));
}

void searches(benchmark::State& state, std::size_t n) {
  Routed r(n);
  std::int64_t sum = 0;
  for (auto _ : state) {
    sum = 0;
    for (std::uint32_t a = 0; a < r.graph.nodes(); ++a) {
      const std::vector<std::uint8_t>& there = r.graph.from(a);
      sum += std::accumulate(there.begin(), there.end(), std::int64_t{0}) - there[a];
    }
    benchmark::DoNotOptimize(sum);
  }
  state.counters["result"] = static_cast<double>(sum);
}

} // namespace
} // namespace snug::bench

int main(int argc, char** argv) {
  using namespace snug::bench;
  snug::keep_freed_memory();
  for (const std::size_t n : {std::size_t{1000}, std::size_t{10'000}}) {
    add("reach/closure", closure, n);
    add("reach/search", search, n);
    add("reach/matrix", matrix, n);
    add("reach/matrix_of_lab", matrix_of_lab, n);
    add("reach/searches", searches, n);
  }
  return run_all(argc, argv);
}
