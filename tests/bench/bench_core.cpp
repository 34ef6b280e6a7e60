// Subjects and their baselines side by side (PERFORMANCE, DECISIONS 27). Each pair sets a counter "result"
// that must be equal: no speed for wrong answers.

#include "core/analyse/analyse.h"
#include "core/document/read.h"
#include "core/document/write.h"
#include "core/model/names.h"
#include "core/net/mac.h"
#include "tests/bench/bench_lab.h"
#include "tests/bench/floor.h"
#include "tests/bench/naive_lab.h"

#include <benchmark/benchmark.h>
#include <boost/icl/interval_map.hpp>
#include <nlohmann/json.hpp>

#include <set>

namespace snug::bench {
namespace {

std::int64_t count(const Analysis& a, std::string_view rule) {
  return std::count_if(a.findings().begin(), a.findings().end(),
                       [rule](const Finding& f) { return f.rule->id == rule; });
}

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

void analyse_subject(benchmark::State& state, std::size_t n) {
  const Lab lab = guest_lab(n);
  for (auto _ : state) {
    const Analysis a = analyse(lab);
    benchmark::DoNotOptimize(a.findings().size());
  }
  state.counters["result"] = static_cast<double>(figures(analyse(lab)).total());
}

void analyse_naive(benchmark::State& state, std::size_t n) {
  const Lab lab = guest_lab(n);
  std::int64_t total = 0;
  for (auto _ : state) benchmark::DoNotOptimize(total = naive_figures(lab).total());
  state.counters["result"] = static_cast<double>(total);
}

void analyse_floor(benchmark::State& state, std::size_t n) {
  const Lab lab = guest_lab(n);
  Columns c;
  for (const Machine& m : lab.machines) {
    c.memory.push_back(m.memory);
    c.processors.push_back(m.processors);
    c.carrier.push_back(m.carrier.number);
    c.name_hash.push_back(stable_hash(m.name));
  }
  for (const Card& card : lab.cards) {
    c.segment.push_back(card.segment.number);
    c.owner.push_back(card.machine.number);
    c.address4.push_back(card.addresses[0].address->as_u32());
    c.address6_high.push_back(card.addresses[1].address->high());
    c.address6_low.push_back(card.addresses[1].address->low());
    c.mac.push_back(card.mac->bits());
  }
  for (const Disk& d : lab.disks) c.disk.push_back(d.size);
  for (auto _ : state) benchmark::DoNotOptimize(linear_pass(c));
}

constexpr std::array<std::string_view, 2> kConflictRules{"address-twice", "address-in-dhcp"};

// From the lab: index, addresses, the two rules.
std::int64_t conflicts(const Lab& lab) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  const Context context{lab, index, {}, addresses};
  std::vector<Finding> found;
  for (const std::string_view id : kConflictRules) find_rule(id)->check(context, found);
  return static_cast<std::int64_t>(found.size());
}

void conflicts_subject(benchmark::State& state, std::size_t n) {
  const Lab lab = range_lab(n);
  std::int64_t found = 0;
  for (auto _ : state) benchmark::DoNotOptimize(found = conflicts(lab));
  state.counters["result"] = static_cast<double>(found);
}

// Addresses and pools of one network in one map from intervals to who is there; networks stand beside each
// other on one line of 64-bit keys.
std::int64_t icl_conflicts(const Lab& lab) {
  using Keys = boost::icl::interval_map<std::uint64_t, std::set<std::uint32_t>>;
  using Interval = boost::icl::interval<std::uint64_t>;
  Keys held;
  Keys pools;
  const auto key = [](SegmentId s, const Address& a) {
    return (std::uint64_t{s.number} << 32U) | a.as_u32();
  };
  for (const Card& c : lab.cards) {
    const std::uint64_t at = key(c.segment, *c.addresses[0].address);
    held += std::make_pair(Interval::closed(at, at), std::set<std::uint32_t>{c.id.number});
    for (const RangeRow& r : c.ranges)
      pools += std::make_pair(Interval::closed(key(c.segment, r.first), key(c.segment, r.last)),
                              std::set<std::uint32_t>{c.id.number});
  }
  std::int64_t found = 0;
  for (const auto& [interval, ids] : held) found += static_cast<std::int64_t>(ids.size()) - 1;
  for (const Card& c : lab.cards) found += pools(key(c.segment, *c.addresses[0].address)).empty() ? 0 : 1;
  return found;
}

void conflicts_icl(benchmark::State& state, std::size_t n) {
  const Lab lab = range_lab(n);
  std::int64_t found = 0;
  for (auto _ : state) benchmark::DoNotOptimize(found = icl_conflicts(lab));
  state.counters["result"] = static_cast<double>(found);
}

void load_subject(benchmark::State& state, std::size_t n) {
  const std::string bytes = write_lab(guest_lab(n));
  std::size_t machines = 0;
  for (auto _ : state) benchmark::DoNotOptimize(machines = read_lab(bytes, "measured")->machines.size());
  state.counters["result"] = static_cast<double>(machines);
}

void load_parse(benchmark::State& state, std::size_t n) {
  const std::string bytes = write_lab(guest_lab(n));
  std::size_t machines = 0;
  for (auto _ : state) benchmark::DoNotOptimize(machines = nlohmann::json::parse(bytes)["machines"].size());
  state.counters["result"] = static_cast<double>(machines);
}

void save_subject(benchmark::State& state, std::size_t n) {
  const Lab lab = guest_lab(n);
  for (auto _ : state) benchmark::DoNotOptimize(write_lab(lab).size());
  state.counters["result"] = static_cast<double>(nlohmann::json::parse(write_lab(lab)).dump().size());
}

void save_dump(benchmark::State& state, std::size_t n) {
  const auto document = nlohmann::json::parse(write_lab(guest_lab(n)));
  for (auto _ : state) benchmark::DoNotOptimize(document.dump(2).size());
  state.counters["result"] = static_cast<double>(document.dump().size());
}

void add(const char* name, void (*run)(benchmark::State&, std::size_t), std::size_t n) {
  benchmark::RegisterBenchmark((std::string(name) + "/" + std::to_string(n)).c_str(),
                               [run, n](benchmark::State& state) { run(state, n); })
      ->Unit(benchmark::kMicrosecond);
}

} // namespace
} // namespace snug::bench

int main(int argc, char** argv) {
  using namespace snug::bench;
  for (const std::size_t n : {std::size_t{1000}, std::size_t{10'000}}) {
    add("analyse/subject", analyse_subject, n);
    add("analyse/floor", analyse_floor, n);
    add("analyse/naive", analyse_naive, n);
  }
  add("conflicts/subject", conflicts_subject, 10'000);
  add("conflicts/icl", conflicts_icl, 10'000);
  add("load/subject", load_subject, 10'000);
  add("load/parse", load_parse, 10'000);
  add("save/subject", save_subject, 10'000);
  add("save/dump", save_dump, 10'000);
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
