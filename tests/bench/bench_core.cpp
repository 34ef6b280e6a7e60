// Subjects and their baselines side by side (PERFORMANCE, DECISIONS 27). Each pair sets a counter "result"
// that must be equal: no speed for wrong answers.

#include "core/addressing/conflicts.h"
#include "core/analyse/analyse.h"
#include "core/base/heap.h"
#include "core/document/read.h"
#include "core/document/write.h"
#include "core/model/names.h"
#include "core/net/mac.h"
#include "core/report/finder.h"
#include "tests/bench/bench_lab.h"
#include "tests/bench/figures.h"
#include "tests/bench/floor.h"
#include "tests/bench/measure.h"

#include <boost/icl/interval_map.hpp>
#include <nlohmann/json.hpp>

#include <array>
#include <random>
#include <set>

namespace snug::bench {
namespace {

void analyse_subject(benchmark::State& state, std::size_t n) {
  const Lab lab = guest_lab(n);
  for (auto _ : state) {
    const Analysis a = analyse(lab);
    benchmark::DoNotOptimize(a.findings().size());
  }
  state.counters["result"] = static_cast<double>(figures(analyse(lab)).total());
}

// A lab in which who needs something gets it from a neighbour, with the rules about reach and without them.
void analyse_needs(benchmark::State& state, std::size_t n) {
  const Lab lab = needing_lab(n);
  for (auto _ : state) {
    const Analysis a = analyse(lab);
    benchmark::DoNotOptimize(a.findings().size());
  }
}

// Promises need the network of the whole lab.
void analyse_promises(benchmark::State& state, std::size_t n) {
  const Lab lab = promising_lab(n);
  for (auto _ : state) {
    const Analysis a = analyse(lab);
    benchmark::DoNotOptimize(a.findings().size());
  }
}

void analyse_without_reach(benchmark::State& state, std::size_t n) {
  const Lab lab = needing_lab(n);
  for (auto _ : state) {
    const Index index(lab);
    const AddressesInUse addresses(index);
    const std::vector<ExerciseBudgets> budgets = budgets_of(index, addresses);
    const Context context{lab, index, BudgetList(budgets), addresses};
    std::vector<Finding> found;
    for (const Rule& rule : rules())
      if (rule.topic != Topic::reach) rule.check(context, found);
    benchmark::DoNotOptimize(found.size());
  }
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
  const Context context{lab, index, BudgetList(index, addresses), addresses};
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

// Addresses and ranges of a lab as numbers; networks are numbered like segments.
struct Packed {
  std::vector<WideKey> addresses;
  std::vector<PackedRange> ranges;
  std::uint32_t groups = 0;
};

Packed pack(const Lab& lab) {
  Packed out;
  for (const Segment& s : lab.segments) out.groups = std::max(out.groups, s.id.number + 1);
  for (const Card& c : lab.cards) {
    const Bits128 at = c.addresses[0].address->value();
    out.addresses.push_back(
        {at.high, at.low, static_cast<std::uint32_t>(out.addresses.size()), c.segment.number});
    for (const RangeRow& r : c.ranges)
      out.ranges.push_back({c.segment.number, r.first.value(), r.last.value()});
  }
  return out;
}

// Some orders of the same input: a processor learns one that always comes again.
std::array<Packed, 8> shuffled(std::size_t n) {
  std::array<Packed, 8> out;
  std::mt19937 random(1); // NOLINT(cert-msc51-cpp): the same every time
  out.fill(pack(range_lab(n)));
  for (Packed& p : out) {
    std::shuffle(p.addresses.begin(), p.addresses.end(), random);
    std::shuffle(p.ranges.begin(), p.ranges.end(), random);
  }
  return out;
}

std::int64_t packed_conflicts(const Packed& input) {
  std::vector<WideKey> addresses = input.addresses;
  const Conflicts found = find_conflicts(addresses, input.groups, input.ranges);
  auto sum = static_cast<std::int64_t>(found.inside.size());
  for (const Conflicts::Run& r : found.equal) sum += r.count - 1;
  return sum;
}

// Addresses and pools of all networks, side by side on one line of 64-bit keys, each in one map from
// intervals to who is there.
std::int64_t icl_conflicts(const Packed& input) {
  using Keys = boost::icl::interval_map<std::uint64_t, std::set<std::uint32_t>>;
  using Interval = boost::icl::interval<std::uint64_t>;
  const auto key = [](std::uint32_t group, std::uint64_t low) { return std::uint64_t{group} << 32U | low; };
  Keys held;
  Keys pools;
  for (const WideKey& a : input.addresses) {
    const std::uint64_t at = key(a.group, a.low);
    held += std::make_pair(Interval::closed(at, at), std::set<std::uint32_t>{a.place});
  }
  for (std::uint32_t r = 0; r < input.ranges.size(); ++r) {
    const PackedRange& range = input.ranges[r];
    pools +=
        std::make_pair(Interval::closed(key(range.group, range.first.low), key(range.group, range.last.low)),
                       std::set<std::uint32_t>{r});
  }
  std::int64_t found = 0;
  for (const auto& [interval, ids] : held) found += static_cast<std::int64_t>(ids.size()) - 1;
  for (const WideKey& a : input.addresses) found += pools(key(a.group, a.low)).empty() ? 0 : 1;
  return found;
}

void conflicts_icl(benchmark::State& state, std::size_t n) {
  const Lab lab = range_lab(n);
  std::int64_t found = 0;
  for (auto _ : state) benchmark::DoNotOptimize(found = icl_conflicts(pack(lab)));
  state.counters["result"] = static_cast<double>(found);
}

void measure_packed(benchmark::State& state, std::size_t n, std::int64_t (*count)(const Packed&)) {
  const auto inputs = shuffled(n);
  std::int64_t found = 0;
  std::size_t round = 0;
  for (auto _ : state) benchmark::DoNotOptimize(found = count(inputs[round++ % inputs.size()]));
  state.counters["result"] = static_cast<double>(found);
}

void conflicts_packed(benchmark::State& state, std::size_t n) { measure_packed(state, n, packed_conflicts); }
void conflicts_packed_icl(benchmark::State& state, std::size_t n) { measure_packed(state, n, icl_conflicts); }

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

std::string lower(std::string_view s) {
  std::string out(s);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

// From the lab to the first result, as the first letter typed into the box does it.
void find_subject(benchmark::State& state, std::size_t n) {
  const Lab lab = guest_lab(n);
  const Analysis analysis(lab);
  for (auto _ : state) {
    const Finder finder(find_items(analysis, {}), lower);
    benchmark::DoNotOptimize(finder.find("9", 50).size());
  }
}

// The same texts, made and looked through without order.
void find_scan(benchmark::State& state, std::size_t n) {
  const Lab lab = guest_lab(n);
  const Analysis analysis(lab);
  for (auto _ : state) {
    std::size_t found = 0;
    for (const FindItem& i : find_items(analysis, {}))
      found += (i.title + i.detail).find('9') != std::string::npos ? 1U : 0U;
    benchmark::DoNotOptimize(found);
  }
}

} // namespace
} // namespace snug::bench

int main(int argc, char** argv) {
  using namespace snug::bench;
  snug::keep_freed_memory();
  for (const std::size_t n : {std::size_t{1000}, std::size_t{10'000}}) {
    add("analyse/subject", analyse_subject, n);
    add("analyse/floor", analyse_floor, n);
    add("analyse/naive", analyse_naive, n);
  }
  add("analyse/needs", analyse_needs, 2000);
  add("analyse/promises", analyse_promises, 2000);
  add("analyse/without_reach", analyse_without_reach, 2000);
  add("conflicts/subject", conflicts_subject, 10'000);
  add("conflicts/icl", conflicts_icl, 10'000);
  add("conflicts/packed", conflicts_packed, 10'000);
  add("conflicts/packed_icl", conflicts_packed_icl, 10'000);
  add("load/subject", load_subject, 10'000);
  add("load/parse", load_parse, 10'000);
  add("save/subject", save_subject, 10'000);
  add("save/dump", save_dump, 10'000);
  add("find/subject", find_subject, 1000);
  add("find/scan", find_scan, 1000);
  return run_all(argc, argv);
}
