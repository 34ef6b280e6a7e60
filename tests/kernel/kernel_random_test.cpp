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
#include <mutex>
#include <thread>

namespace snug::test {
namespace {

struct Counts {
  std::atomic<int> labs = 0, agree = 0, differ = 0, unreliable = 0, reached = 0, one_way = 0, beyond = 0;
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

// "Unreliable" is said only where an address is there twice: on two cards, or on a card of a machine that has
// another one (any of them answers, RFC 1122 3.3.4.2).
bool has_reason(const Lab& lab, const ReachAnswer& a) {
  if (!a.unsure) return false;
  std::size_t cards = 0;
  for (const Card& c : lab.cards) {
    const auto holds = [&](const Card& other) {
      return other.machine == c.machine &&
             std::any_of(other.addresses.begin(), other.addresses.end(),
                         [&](const CardAddress& held) { return held.address == a.unsure; });
    };
    if (a.unsure->is_v4() ? std::any_of(lab.cards.begin(), lab.cards.end(), holds) : holds(c)) ++cards;
  }
  return cards > 1;
}

bool has_translator(const Lab& lab) {
  return std::any_of(lab.segments.begin(), lab.segments.end(),
                     [](const Segment& s) { return s.type == SegmentKind::nat; });
}

AnyId node_of(MachineId m) { return m == kBeyond ? AnyId{Kind::outside, 0} : AnyId(m); }

std::vector<Echo> echoes_from(const Lab& lab, MachineId from, const std::vector<MachineId>& on, Random& r) {
  std::vector<Echo> out;
  for (const Card& c : lab.cards) {
    if (c.machine == from || std::find(on.begin(), on.end(), c.machine) == on.end()) continue;
    for (const CardAddress& a : c.addresses) {
      Echo e{from, c.machine, *a.address, a.address->is_v4() ? 84 : 104, false};
      if (a.address->is_v4() && r.chance(15)) {
        constexpr int kSizes[4] = {1400, 1500, 1504, 8028};
        e.size = kSizes[r.below(4)];
        e.keep_whole = r.chance(50);
      }
      out.push_back(e);
    }
  }
  if (from != kBeyond && has_translator(lab))
    out.push_back({from, kBeyond, Address::v4(0xc000'0201), 84, false});
  return out;
}

ReachQuestion as_question(const Echo& e) {
  ReachQuestion q;
  q.from = node_of(e.from);
  q.to = node_of(e.to);
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
  KernelNet net(lab, on);
  std::vector<MachineId> senders = on;
  if (has_translator(lab)) senders.push_back(kBeyond);
  for (const MachineId from : senders) {
    const std::vector<Echo> echoes = echoes_from(lab, from, on, r);
    std::vector<EchoSeen> seen = net.send(echoes, kFirst);
    for (std::size_t i = 0; i < echoes.size(); ++i) {
      const ReachAnswer a = reach.ask(as_question(echoes[i]));
      if (a.verdict == Reached::unreliable) {
        ++n.unreliable;
        EXPECT_TRUE(has_reason(lab, a)) << "lab " << seed << ": " << to_text(from) << " to "
                                        << to_text(echoes[i].target) << ": " << told(a);
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
      ADD_FAILURE() << "lab " << seed << ": " << to_text(from) << " to " << to_text(echoes[i].target)
                    << " of " << to_text(echoes[i].to) << ", " << echoes[i].size << " octets"
                    << (echoes[i].keep_whole ? ", whole" : "")
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
            << " one way, " << n.beyond << " through a translator), " << n.differ << " differ, "
            << n.unreliable << " unreliable" << std::endl;
  EXPECT_EQ(n.differ, 0);
  EXPECT_LT(n.unreliable * 4, n.agree);
  if (!one) {
    EXPECT_GT(n.beyond, 0);
  }
}

} // namespace
} // namespace snug::test
