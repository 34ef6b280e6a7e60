#include "core/reach/by_exercise.h"

#include "core/budget/budget.h"
#include "tests/support/network_lab.h"
#include "tests/support/rule_world.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

// Exercises with a random half of the machines.
void add_exercises(Random& r, Lab& lab, std::uint32_t count) {
  for (std::uint32_t i = 0; i < count; ++i) {
    Exercise e;
    e.id = ExerciseId{900'000U + i};
    for (const Machine& m : lab.machines)
      if (r.chance(70)) e.on.push_back(m.id);
    lab.exercises.push_back(e);
  }
}

// Some ask for an address, some answer, from a range that may be too small.
void give_out(Random& r, Lab& lab) {
  for (Card& card : lab.cards) {
    if (card.addresses.empty()) continue;
    CardAddress& a = card.addresses.front();
    if (r.chance(40)) {
      a.kind = AddressKind::dhcp;
      a.address.reset();
      a.length.reset();
    } else if (a.address && a.address->is_v4() && r.chance(40)) {
      card.dhcp = DhcpDuty::server;
      if (const auto first = a.address->plus(1)) {
        RangeRow range;
        range.first = *first;
        range.last = first->plus(r.chance(50) ? 1 : 20).value_or(*first);
        card.ranges.push_back(range);
      }
    }
  }
}

// Gives how many pairs differ from everything on.
std::size_t compare(const Lab& lab) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  ReachByExercise shared(index, addresses);
  std::size_t different = 0;
  for (std::size_t i = 0; i < shared.occasions(); ++i) {
    Reach own(index, addresses, i == 0 ? ExerciseId{} : lab.exercises[i - 1].id);
    for (const Machine& a : lab.machines)
      for (const Machine& b : lab.machines) {
        ReachQuestion q;
        q.from = a.id;
        q.to = b.id;
        const Reached verdict = own.verdict(q);
        EXPECT_EQ(shared.at(i).verdict(q), verdict)
            << "occasion " << i << ": " << to_text(q.from) << " to " << to_text(q.to);
        if (i > 0 && shared.at(0).verdict(q) != verdict) ++different;
      }
  }
  return different;
}

// Whether exercises share a network or not, who is given addresses by whom included.
TEST(ReachByExercise, EachAnswersAsOneMadeForItAlone) {
  std::size_t different = 0;
  for (int i = 0, n = scaled(2'000); i < n && !HasFailure(); ++i) {
    SCOPED_TRACE(i);
    Random r(static_cast<std::uint64_t>(i));
    Lab lab = network_lab(r, {10, 3});
    if (i % 2 == 0) give_out(r, lab);
    add_exercises(r, lab, 3);
    different += compare(lab);
  }
  EXPECT_GT(different, 100U);
}

// Guests keep a switch without uplink up, so a network without them is another one.
TEST(ReachByExercise, WhoRunsDecidesWhetherASwitchWithoutUplinkIsUp) {
  World w;
  w.card(w.rack_hold).addresses.emplace_back().address = address("172.22.20.31");
  w.card(w.rack_hold).connected = false;
  for (const bool with_guest : {true, false}) {
    Exercise e;
    e.id.number = w.lab.facts.next_id++;
    e.on = {w.rack};
    if (with_guest) e.on.push_back(w.guest);
    w.lab.exercises.push_back(e);
  }
  const Index index(w.lab);
  const AddressesInUse addresses(index);
  ReachByExercise shared(index, addresses);
  const auto is_up = [&](std::size_t occasion) {
    const ReachNetwork& n = shared.at(occasion).network();
    return n.ports()[n.port_of(n.node_of(w.rack), w.rack_hold)].piece != kNowhere;
  };
  EXPECT_TRUE(is_up(0));
  EXPECT_TRUE(is_up(1));
  EXPECT_FALSE(is_up(2));
}

} // namespace
} // namespace snug::test
