#include "core/budget/segments.h"

#include "tests/support/ship_lab.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Ship;

Address ip(const char* text) { return parse_address(text).value(); }

void give(Ship& ship, CardId card, SegmentId segment, const char* address) {
  for (Card& c : ship.lab.cards) {
    if (c.id != card) continue;
    c.segment = segment;
    c.addresses = {{{}, AddressKind::typed, ip(address), std::nullopt}};
  }
}

TEST(SegmentBudgets, AddressesAreCountedOnce) {
  Ship ship;
  const SegmentId steering = ship.add_segment("Steering", SegmentKind::isolated);
  Segment& s = ship.lab.segments[0];
  s.prefix4 = parse_prefix("192.0.2.0/26").value();
  give(ship, ship.add_card(ship.beacon), steering, "192.0.2.10");
  give(ship, ship.add_card(ship.helm), steering, "192.0.2.10");     // twice: one address
  give(ship, ship.add_card(ship.hold), steering, "192.0.2.40");     // inside what is kept
  give(ship, ship.add_card(ship.deck_a), steering, "192.0.2.63");   // broadcast: no host address
  give(ship, ship.add_card(ship.deck_b), steering, "198.51.100.1"); // elsewhere
  s.kept = {{{}, ip("192.0.2.30"), ip("192.0.2.41")}, {{}, ip("192.0.2.40"), ip("192.0.2.200")}};
  const Index index(ship.lab);
  const auto b = address_budgets(index, AddressesInUse(index))[0];
  EXPECT_EQ(b.usable, 62);
  EXPECT_EQ(b.used, 2);
  EXPECT_EQ(b.reserved, 62 - 30 + 1 - 1); // .30 to .62, without .40
  EXPECT_EQ(b.free(), 62 - 2 - 32);
}

TEST(SegmentBudgets, WhoWaitsForAnAddressCounts) {
  Ship ship;
  const SegmentId steering = ship.add_segment("Steering", SegmentKind::isolated);
  for (Segment& s : ship.lab.segments) s.prefix4 = *parse_prefix("192.0.2.0/30");
  for (const MachineId m : {ship.beacon, ship.hold}) {
    ship.add_card(m);
    ship.lab.cards.back().segment = steering;
    ship.lab.cards.back().addresses = {CardAddress{{}, AddressKind::suggested, {}, {}}};
  }
  const auto budget = [&] {
    const Index index(ship.lab);
    return address_budgets(index, AddressesInUse(index))[0];
  };
  EXPECT_EQ(budget().wanted, 2);
  EXPECT_EQ(budget().verdict(), Verdict::fits); // two hosts are there
  ship.add_card(ship.beacon);
  ship.lab.cards.back() = ship.lab.cards[ship.lab.cards.size() - 2];
  ship.lab.cards.back().id.number = ship.lab.facts.next_id++;
  EXPECT_EQ(budget().wanted, 3);
  EXPECT_EQ(budget().verdict(), Verdict::over);
}

TEST(SegmentBudgets, WithoutAPrefixThereIsNothing) {
  Ship ship;
  ship.add_segment("Steering", SegmentKind::isolated);
  const Index index(ship.lab);
  const auto b = address_budgets(index, AddressesInUse(index))[0];
  EXPECT_EQ(b.usable, 0);
  EXPECT_EQ(b.free(), 0);
}

TEST(SegmentBudgets, MemoryOfRunningMachinesWithACardOnIt) {
  Ship ship;
  const SegmentId steering = ship.add_segment("Steering", SegmentKind::isolated);
  const SegmentId cargo = ship.add_segment("Cargo", SegmentKind::isolated);
  give(ship, ship.add_card(ship.beacon), steering, "192.0.2.10");
  give(ship, ship.add_card(ship.beacon), steering, "192.0.2.11"); // counted once
  ship.add_card(ship.hold);
  ship.lab.cards.back().trunk = {{{}, steering, 10}, {{}, cargo, 20}};
  const Index index(ship.lab);
  const auto all = budgets_of(index, AddressesInUse(index));
  EXPECT_EQ(all[0].segments[0].memory, 2 * 4336);
  EXPECT_EQ(all[0].segments[1].memory, 4336);
  EXPECT_EQ(all[2].segments[0].memory, 4336); // "Quiet": beacon alone
  EXPECT_EQ(all[2].segments[1].memory, 0);
}

} // namespace
} // namespace snug
