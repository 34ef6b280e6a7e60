#include "core/model/index.h"

#include "core/model/store.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"
#include "tests/support/ship_lab.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Random;
using test::Ship;

Machine machine(std::uint32_t id, std::uint32_t carrier) {
  Machine m;
  m.id.number = id;
  m.carrier.number = carrier;
  return m;
}

// place_of searches the lists.
TEST(Index, FindsEveryElementWhereTheLabHasIt) {
  for (int seed = 0; seed < test::scaled(200); ++seed) {
    Random r(static_cast<std::uint64_t>(seed));
    const Lab lab = test::random_lab(r, 6);
    const Index index(lab);
    for (const Kind kind : kinds_in_document()) {
      if (letter_of(kind) == 0) continue;
      const Store& store = store_of(kind);
      for (std::size_t i = 0; i < store.count(lab); ++i)
        ASSERT_EQ(index.place(store.table->id(store.at(lab, i))), i);
      for (std::uint32_t n = 1; n < 30; ++n) {
        const auto there = place_of(lab, AnyId{kind, n});
        ASSERT_EQ(index.place(AnyId{kind, n}), there ? static_cast<std::uint32_t>(*there) : kNowhere);
      }
    }
  }
}

TEST(Index, NumbersUsedTwiceOrFarAwayAreFound) {
  Lab lab;
  lab.machines = {machine(7, 0), machine(999'999'999, 7)};
  Segment s;
  s.id.number = 7;
  lab.segments = {s};
  const Index index(lab);
  EXPECT_EQ(index.place(MachineId{7}), 0U);
  EXPECT_EQ(index.place(SegmentId{7}), 0U);
  EXPECT_EQ(index.place(MachineId{999'999'999}), 1U);
  EXPECT_EQ(index.place(CardId{7}), kNowhere);
  EXPECT_EQ(index.place(MachineId{8}), kNowhere);
  EXPECT_EQ(index.place(AnyId{Kind::pc, 0}), kNowhere);
  EXPECT_EQ(index.machine(MachineId{7}), &lab.machines[0]);
  EXPECT_EQ(index.carrier_of(1), 0U);
}

TEST(Index, CarriersComeFirst) {
  Lab lab;
  lab.machines = {machine(1, 3), machine(2, 1), machine(3, 0), machine(4, 0)};
  const Index index(lab);
  std::vector<std::uint32_t> at(4);
  for (std::uint32_t i = 0; i < 4; ++i) at[index.carriers_first()[i]] = i;
  EXPECT_LT(at[2], at[0]);
  EXPECT_LT(at[0], at[1]);
  EXPECT_EQ(index.depth_of(2), 0);
  EXPECT_EQ(index.depth_of(0), 1);
  EXPECT_EQ(index.depth_of(1), 2);
  EXPECT_EQ(std::vector(index.guests_of(kNowhere).begin(), index.guests_of(kNowhere).end()),
            (std::vector<std::uint32_t>{2, 3}));
  EXPECT_EQ(index.guests_of(2).front(), 0U);
  EXPECT_TRUE(index.is_hypervisor(0));
  EXPECT_FALSE(index.is_hypervisor(1));
  EXPECT_EQ(std::vector(index.hypervisors().begin(), index.hypervisors().end()),
            (std::vector<std::uint32_t>{0, 2}));
}

// Documents and edits refuse circles; analysing one must still end.
TEST(Index, ACircleIsCutAtItsFirstMachine) {
  Lab lab;
  lab.machines = {machine(1, 0), machine(2, 4), machine(3, 2), machine(4, 3), machine(5, 5), machine(6, 99)};
  const Index index(lab);
  EXPECT_EQ(index.carriers_first().size(), 6U);
  EXPECT_EQ(index.carrier_of(1), kNowhere);
  EXPECT_EQ(index.depth_of(3), 2); // 2, 3, 4
  EXPECT_EQ(index.carrier_of(4), kNowhere);
  EXPECT_EQ(index.carrier_of(5), kNowhere); // m99 is not there
  EXPECT_EQ(index.guests_of(kNowhere).size(), 4U);
}

TEST(Index, PartsOfAMachineInOrder) {
  Ship ship;
  const CardId first = ship.add_card(ship.hold), other = ship.add_card(ship.beacon),
               second = ship.add_card(ship.hold);
  const Index index(ship.lab);
  const auto cards = index.cards_of(index.place(ship.hold));
  ASSERT_EQ(cards.size(), 2U);
  EXPECT_EQ(ship.lab.cards[cards[0]].id, first);
  EXPECT_EQ(ship.lab.cards[cards[1]].id, second);
  EXPECT_EQ(index.machine_of_card(index.place(other)), index.place(ship.beacon));
  const auto disks = index.disks_of(index.place(ship.hold));
  ASSERT_EQ(disks.size(), 2U);
  EXPECT_EQ(ship.lab.disks[disks[1]].id, ship.bay);
  EXPECT_EQ(index.disks()[index.place(ship.tickets_disk)].store, AnyId(ship.cargo));
  EXPECT_TRUE(index.is_hypervisor(index.place(ship.deck_b))); // by its role, without guests
}

} // namespace
} // namespace snug
