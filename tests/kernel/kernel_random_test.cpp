// Random labs as namespaces of the kernel that runs this test: every pair of machines, by every address, with
// real packets. The kernel is the authority.

#include "tests/kernel/kernel_net.h"

#include "core/budget/budget.h"
#include "core/reach/reach.h"
#include "tests/support/network_lab.h"
#include "tests/support/scale.h"

#include <atomic>
#include <cstdlib>
#include <gtest/gtest.h>
#include <iostream>
#include <map>
#include <mutex>
#include <set>
#include <thread>

namespace snug::test {
namespace {

struct Counts {
  std::atomic<int> labs = 0, agree = 0, differ = 0, unreliable = 0, reached = 0, one_way = 0, beyond = 0,
                   given = 0;
};

std::string told(const ReachAnswer& a) {
  std::string out(word(a.verdict));
  for (const ReachStep& s : a.steps)
    out += "\n    " + to_text(s.node) + " " + to_text(s.card) + " " +
           std::to_string(static_cast<int>(s.what)) + " " + to_text(s.address) + (s.back ? " back" : "");
  return out;
}

// Where chance decides who gets a packet that is never answered, it may arrive or not.
bool agrees(const ReachAnswer& a, const EchoSeen& seen) {
  if (a.verdict == Reached::reaches) return seen.answered && seen.arrived;
  if (seen.answered && seen.arrived) return false;
  return a.unsure || seen.arrived == (a.verdict == Reached::one_way);
}

// "Unreliable" is said only where several DHCP servers could answer, or an address is there twice: on two
// cards, or on a card of a machine that has another one (any of them answers, RFC 1122 3.3.4.2).
bool has_reason(const ReachNetwork& n, const ReachAnswer& a) {
  if (a.unsure_lease) return true;
  if (!a.unsure) return false;
  std::set<std::uint32_t> cards; // ports: the routers of a LAN's VLANs have one name
  for (const ReachAddress& held : n.with(*a.unsure)) {
    const ReachNode& node = n.nodes()[n.ports()[held.port].node];
    if (!a.unsure->is_v4()) cards.insert(held.port);
    for (std::uint32_t p = node.first_port; p < node.end_port && a.unsure->is_v4(); ++p) cards.insert(p);
  }
  return cards.size() > 1;
}

// A node of the plan as a system of the kernel; the LAN of a VLAN has no name of its own in questions.
MachineId system_of(const Lab& lab, AnyId node) {
  switch (node.kind) {
  case Kind::pc:
    return kPc;
  case Kind::outside:
    return kBeyond;
  case Kind::segment:
    return translator_of(SegmentId{node.number});
  case Kind::lan:
    return router_of(lab, LanId{node.number}, 0);
  default:
    return MachineId{node.number};
  }
}

// What the plan's DHCP servers gave, for the kernel to hold as it is.
std::vector<Given> given_by(const Lab& lab, const ReachNetwork& n) {
  std::vector<Given> out;
  for (const ReachNode& node : n.nodes())
    for (std::uint32_t p = node.first_port; p < node.end_port; ++p) {
      const ReachPort& port = n.ports()[p];
      const Card* card = port.id.kind == Kind::card ? find<Card>(lab, CardId{port.id.number}) : nullptr;
      for (const ReachAddress& a : n.addresses(port)) {
        const auto is_it = [&](const CardAddress& row) { return row.address == a.address; };
        const bool typed = card && std::any_of(card->addresses.begin(), card->addresses.end(), is_it);
        if (!port.wants_lease || typed || !a.address.is_v4()) continue;
        Given& g = out.emplace_back();
        g.system = system_of(lab, node.id);
        g.card = port.id;
        g.address = a.address;
        g.length = a.length;
        const Machine* m = find<Machine>(lab, g.system);
        for (const ReachRoute& r : n.routes(node)) {
          const auto is_row = [&](const Route& row) { return row.to == r.to && row.via == r.via; };
          const bool set = m && std::any_of(m->routes.begin(), m->routes.end(), is_row);
          if (r.port == p && r.to == Prefix() && r.via && !set) g.gateway = r.via;
        }
      }
    }
  return out;
}

// Nodes that are on, one for each name.
std::vector<std::uint32_t> subjects(const ReachNetwork& n) {
  std::vector<std::uint32_t> out;
  for (std::uint32_t i = 0; i < n.nodes().size(); ++i)
    if (n.nodes()[i].on && n.node_of(n.nodes()[i].id) == i) out.push_back(i);
  return out;
}

std::vector<Echo> echoes_from(const Lab& lab, const ReachNetwork& n, std::uint32_t from, Random& r) {
  std::vector<Echo> out;
  for (const std::uint32_t to : subjects(n)) {
    const ReachNode& node = n.nodes()[to];
    if (to == from) continue;
    for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
      for (const ReachAddress& a : n.addresses(n.ports()[p])) {
        Echo e{system_of(lab, n.nodes()[from].id), system_of(lab, node.id), a.address,
               a.address.is_v4() ? 84 : 104, false};
        if (a.address.is_v4() && r.chance(15)) {
          constexpr int kSizes[4] = {1400, 1500, 1504, 8028};
          e.size = kSizes[r.below(4)];
          e.keep_whole = r.chance(50);
        }
        out.push_back(e);
      }
  }
  return out;
}

ReachQuestion as_question(const Echo& e, const std::map<MachineId, AnyId>& nodes) {
  ReachQuestion q;
  q.from = nodes.at(e.from);
  q.to = nodes.at(e.to);
  q.target = e.target;
  q.size = e.size;
  q.keep_whole = e.keep_whole;
  return q;
}

std::mutex telling;
constexpr int kWorkers = 12; // they mostly wait
constexpr int kFirst = 150;  // milliseconds
// A neighbour is asked for 90 ms: on a busy machine that may fail more than once.
constexpr int kAgain[] = {300, 1500, 1500, 3000};

void compare(std::uint64_t seed, Counts& n) {
  Random r(seed);
  const Lab lab = network_lab(r);
  const Index index(lab);
  const AddressesInUse addresses(index);
  const ExerciseId exercise = lab.exercises.front().id;
  const std::vector<std::uint8_t> runs = running(index, exercise);
  std::vector<MachineId> on;
  for (std::size_t m = 0; m < runs.size(); ++m)
    if (runs[m] != 0) on.push_back(lab.machines[m].id);
  Reach reach(index, addresses, exercise);
  const ReachNetwork& plan = reach.network();
  std::vector<Given> given = given_by(lab, plan);
  n.given += static_cast<int>(given.size());
  KernelNet net(lab, on, std::move(given));
  std::map<MachineId, AnyId> nodes;
  for (const std::uint32_t i : subjects(plan)) nodes[system_of(lab, plan.nodes()[i].id)] = plan.nodes()[i].id;
  for (const std::uint32_t from : subjects(plan)) {
    const std::vector<Echo> echoes = echoes_from(lab, plan, from, r);
    std::vector<EchoSeen> seen = net.send(echoes, kFirst);
    for (std::size_t i = 0; i < echoes.size(); ++i) {
      const ReachAnswer a = reach.ask(as_question(echoes[i], nodes));
      if (a.verdict == Reached::unreliable) {
        ++n.unreliable;
        EXPECT_TRUE(has_reason(plan, a)) << "lab " << seed << ": " << to_text(nodes.at(echoes[i].from))
                                         << " to " << to_text(echoes[i].target) << ": " << told(a);
        continue;
      }
      // Others of the same round fill tables and buffers: whoever differs is asked again alone.
      for (const int wait : kAgain)
        if (!agrees(a, seen[i])) seen[i] = net.send({echoes[i]}, wait).front();
      if (a.verdict == Reached::reaches) ++n.reached;
      if (a.verdict == Reached::one_way) ++n.one_way;
      if (a.verdict == Reached::reaches && echoes[i].to == kBeyond) ++n.beyond;
      ++(agrees(a, seen[i]) ? n.agree : n.differ);
      if (agrees(a, seen[i])) continue;
      const std::lock_guard lock(telling);
      ADD_FAILURE() << "lab " << seed << ": " << to_text(nodes.at(echoes[i].from)) << " to "
                    << to_text(echoes[i].target) << " of " << to_text(nodes.at(echoes[i].to)) << ", "
                    << echoes[i].size << " octets" << (echoes[i].keep_whole ? ", whole" : "")
                    << ": the kernel: " << (seen[i].arrived ? "arrived " : "")
                    << (seen[i].answered ? "answered" : "") << "; the plan: " << told(a);
    }
  }
  ++n.labs;
}

TEST(Kernel, RandomLabsReachAsTheirNamespacesDo) {
  if (const std::string why = KernelNet::why_not(); !why.empty()) GTEST_SKIP() << "skipped: " << why;
  const char* one = std::getenv("SNUGLAB_KERNEL_LAB");
  const std::uint64_t first = one ? std::strtoull(one, nullptr, 10) : 1;
  const std::uint64_t end = first + (one ? 1 : static_cast<std::uint64_t>(scaled(500)));
  Counts n;
  std::atomic<std::uint64_t> next = first;
  std::vector<std::thread> workers;
  for (int i = 0; i < kWorkers; ++i)
    workers.emplace_back([&] {
      for (std::uint64_t seed = 0; (seed = next++) < end;) {
        try {
          compare(seed, n);
        } catch (const std::exception& e) {
          const std::lock_guard lock(telling);
          ADD_FAILURE() << "lab " << seed << ": " << e.what();
        }
      }
    });
  for (std::thread& w : workers) w.join();
  std::cout << n.labs << " labs: " << n.agree << " pairs agree (" << n.reached << " reach, " << n.one_way
            << " one way, " << n.beyond << " through a translator), " << n.given << " addresses given out, "
            << n.differ << " differ, " << n.unreliable << " unreliable" << std::endl;
  EXPECT_EQ(n.differ, 0);
  EXPECT_LT(n.unreliable * 4, n.agree);
  if (!one) {
    EXPECT_GT(n.beyond, 0);
  }
}

} // namespace
} // namespace snug::test
