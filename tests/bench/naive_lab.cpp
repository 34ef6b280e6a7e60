#include "tests/bench/naive_lab.h"

#include "tests/bench/naive_budget.h"

#include <map>
#include <string>

namespace snug::bench {

namespace {

void add_budgets(const test::NaiveBudgets& b, Figures& out) {
  for (const auto& [id, runs] : b.running) out.running += runs ? 1 : 0;
  for (const auto& [id, m] : b.memory) {
    (id == "pc" ? out.pc_headroom : out.inner_headroom) += m.budget - m.taken;
    (id == "pc" ? out.pc_expected : out.inner_expected) += m.expected;
  }
  for (const auto& [id, p] : b.processors) out.processors += p.product;
  for (const auto& [id, d] : b.disks) {
    out.disk_expected += d.expected;
    out.disk_worst += d.worst;
  }
  for (const auto& [id, memory] : b.segment_memory) out.segment_memory += memory;
}

// Layer-2 networks: "PC/s3" or "m7/s3", joined where a connected card carries a segment.
struct Networks {
  std::map<std::string, std::string> up;
  std::string root(const std::string& n) {
    const auto it = up.find(n);
    if (it == up.end() || it->second == n) return n;
    return it->second = root(it->second);
  }
};

void count_doubles(const Lab& lab, Figures& out) {
  std::map<std::string, std::string> carriers;
  for (const Machine& m : lab.machines) carriers[to_text(m.id)] = m.carrier ? to_text(m.carrier) : "PC";
  Networks nets;
  const auto where = [&carriers](const Card& c, SegmentId segment) {
    return carriers.at(to_text(c.machine)) + "/" + to_text(segment);
  };
  for (const Card& c : lab.cards)
    for (const SegmentTag& t : c.carries)
      if (c.connected)
        nets.up[nets.root(to_text(c.machine) + "/" + to_text(t.segment))] = nets.root(where(c, t.segment));
  std::map<std::string, std::int64_t> held, macs, names;
  for (const Card& c : lab.cards) {
    if (!c.segment || !c.connected) continue;
    const std::string net = nets.root(where(c, c.segment));
    for (const CardAddress& a : c.addresses)
      if (a.address) ++held[net + " " + to_text(*a.address)];
    if (c.mac) ++macs[net + " " + to_text(*c.mac)];
  }
  for (const Machine& m : lab.machines) ++names[m.name];
  for (const auto& [key, n] : held) out.addresses_twice += n - 1;
  for (const auto& [key, n] : macs) out.macs_twice += n - 1;
  for (const auto& [key, n] : names) out.names_twice += n - 1;
}

} // namespace

Figures naive_figures(const Lab& lab) {
  Figures out;
  for (const test::NaiveBudgets& b : test::naive_budgets(lab)) add_budgets(b, out);
  count_doubles(lab, out);
  return out;
}

} // namespace snug::bench
