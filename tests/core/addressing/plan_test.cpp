#include "core/addressing/plan.h"

#include "core/addressing/prefix_plan.h"
#include "tests/support/random_lab.h"
#include "tests/support/rule_world.h"
#include "tests/support/scale.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug::test {

namespace {

Lab planned(const Lab& lab, const PlanOptions& options = {}) {
  const auto edit = suggest_addresses(lab, options);
  Lab out = lab;
  if (edit) {
    EXPECT_TRUE(apply(out, *edit));
  } else {
    ADD_FAILURE() << english(edit.error());
  }
  return out;
}

std::string first_address(const Lab& lab, CardId id) {
  const Card* c = find<Card>(lab, id);
  return c->addresses.empty() || !c->addresses[0].address ? "" : to_text(*c->addresses[0].address);
}

Card& suggested(World& w, CardId id) {
  for (CardAddress& a : w.card(id).addresses) a.kind = AddressKind::suggested;
  return w.card(id);
}

} // namespace

TEST(Plan, NothingToDoGivesAnEmptyEdit) {
  World w;
  const auto edit = suggest_addresses(w.lab);
  ASSERT_TRUE(edit);
  EXPECT_TRUE(edit->empty());
}

TEST(Plan, OneNumberOnAllSegments) {
  World w;
  const MachineId m = w.add_machine("stage");
  const CardId a = w.add_card(m, w.deck), b = w.add_card(m, w.hold), c = w.add_card(m, w.crew);
  w.add_card(w.desk, w.hold, "172.22.20.11"); // .11 is free on Deck only
  const Lab lab = planned(w.lab);
  EXPECT_EQ(first_address(lab, a), "172.22.10.13"); // .10 pilot, .11 taken on Hold, .12 desk
  EXPECT_EQ(first_address(lab, b), "172.22.20.13");
  EXPECT_EQ(first_address(lab, c), "172.22.50.13");
}

TEST(Plan, TypedNumberLeads) {
  World w;
  const CardId c = w.add_card(w.desk, w.hold);
  EXPECT_EQ(first_address(planned(w.lab), c), "172.22.20.12"); // desk has .12 on Deck
}

TEST(Plan, TypedAddressesNeverMove) {
  World w;
  w.card(w.desk_deck).addresses[0].address = address("172.22.10.10"); // twice, but typed
  const Lab lab = planned(w.lab);
  EXPECT_EQ(first_address(lab, w.desk_deck), "172.22.10.10");
  EXPECT_EQ(first_address(lab, w.pilot_deck), "172.22.10.10");
}

TEST(Plan, SuggestedAddressGivesWayToTyped) {
  World w;
  suggested(w, w.pilot_deck);
  w.card(w.desk_deck).addresses[0].address = address("172.22.10.10");
  const Lab lab = planned(w.lab);
  EXPECT_EQ(first_address(lab, w.desk_deck), "172.22.10.10");
  EXPECT_EQ(first_address(lab, w.pilot_deck), "172.22.10.11");
}

TEST(Plan, CarryingCardsTakeNone) {
  World w;
  EXPECT_EQ(first_address(planned(w.lab), w.rack_hold), "");
}

TEST(Plan, KeepsOffKeptRangesAndDhcp) {
  World w;
  w.segment(w.hold).kept = {range("172.22.20.1", "172.22.20.60")};
  const MachineId m = w.add_machine("stage");
  const CardId c = w.add_card(m, w.hold);
  EXPECT_EQ(first_address(planned(w.lab), c), "172.22.20.61");
}

TEST(Plan, RouterTakesTheGatewayPlace) {
  World w;
  const SegmentId s = w.add_segment("Yard", "172.22.60.0/24");
  const CardId c = w.add_card(w.router, s);
  w.card(c).forwards4 = true;
  const Lab lab = planned(w.lab);
  EXPECT_EQ(first_address(lab, c), "172.22.60.1");
  EXPECT_EQ(find<Segment>(lab, s)->gateway4, address("172.22.60.1"));
}

TEST(Plan, BridgedSegmentNeedsAKnownPool) {
  World w;
  const CardId c = w.add_card(w.pilot, w.lane);
  const Lab lab = planned(w.lab);
  EXPECT_EQ(first_address(lab, c), "192.168.40.10");
  w.its_lan().pool.clear();
  EXPECT_EQ(first_address(planned(w.lab), c), "");
}

TEST(Plan, PrefixesByNumber) {
  World w;
  const SegmentId s = w.add_segment("Yard", "");
  w.segment(s).number = 77;
  const SegmentId next = w.add_segment("Pier", "");
  w.segment(next).number = 10; // Deck has 172.22.10.0/24: the lowest free
  const Lab lab = planned(w.lab);
  EXPECT_EQ(find<Segment>(lab, s)->prefix4, prefix("172.22.77.0/24"));
  EXPECT_EQ(find<Segment>(lab, next)->prefix4, prefix("172.22.0.0/24"));
}

// RFC 1878 table: 2, 6, 14, 30, 62 hosts want /30, /29, /28, /27, /26.
TEST(Plan, PrefixesByNeedAreLargestFirst) {
  World w;
  w.lab.numbering.block = prefix("172.31.0.0/24");
  std::vector<std::pair<SegmentId, std::string>> wanted;
  for (const auto& [hosts, expected] : {std::pair<int, const char*>{2, "172.31.0.120/30"},
                                        {6, "172.31.0.112/29"},
                                        {14, "172.31.0.96/28"},
                                        {30, "172.31.0.64/27"},
                                        {62, "172.31.0.0/26"}}) {
    const SegmentId s = w.add_segment("for " + std::to_string(hosts), "");
    for (int i = 0; i < hosts; ++i) w.add_card(w.add_machine("host"), s);
    wanted.emplace_back(s, expected);
  }
  PlanOptions options;
  options.by_need = true;
  options.addresses = false;
  const Lab lab = planned(w.lab, options);
  for (const auto& [s, expected] : wanted) EXPECT_EQ(to_text(*find<Segment>(lab, s)->prefix4), expected);
}

// A segment without a prefix gets one that holds what people typed there, by number and by need.
TEST(Plan, PrefixHoldsTypedAddresses) {
  for (const bool by_need : {false, true}) {
    World w;
    const SegmentId late = w.add_segment("Late", "");
    const CardId one = w.add_card(w.pilot, late, "10.20.3.77"), two = w.add_card(w.desk, late, "10.20.3.9");
    w.add_card(w.router, late);
    PlanOptions options;
    options.by_need = by_need;
    const Lab lab = planned(w.lab, options);
    const auto prefix4 = find<Segment>(lab, late)->prefix4;
    ASSERT_TRUE(prefix4);
    EXPECT_TRUE(prefix4->contains(address("10.20.3.77")) && prefix4->contains(address("10.20.3.9")))
        << to_text(*prefix4);
    EXPECT_EQ(prefix4->length(), by_need ? 25 : 24);
    EXPECT_EQ(first_address(lab, one), "10.20.3.77");
    EXPECT_EQ(first_address(lab, two), "10.20.3.9");
    EXPECT_TRUE(places_of(lab, "address-outside").empty());
  }
  World taken; // the network they lie in is another segment's: the scheme decides, and a finding tells
  const SegmentId late = taken.add_segment("Late", "");
  taken.add_card(taken.pilot, late, "172.22.20.77");
  const Lab lab = planned(taken.lab);
  EXPECT_FALSE(find<Segment>(lab, late)->prefix4->overlaps(*find<Segment>(lab, taken.hold)->prefix4));
}

TEST(Plan, ChosenBlockKeepsAwayFromPlacesAndUsualDefaults) {
  World w;
  w.lab.numbering.block.reset();
  Place p;
  p.id.number = w.lab.facts.next_id++;
  p.prefixes = {prefix("172.24.0.0/14")};
  w.lab.places.push_back(p);
  const SegmentId s = w.add_segment("Yard", "");
  const Lab lab = planned(w.lab);
  ASSERT_TRUE(lab.numbering.block);
  EXPECT_EQ(lab.numbering.block, prefix("172.23.0.0/16")); // 172.22 is in use
  EXPECT_TRUE(lab.numbering.block->contains(*find<Segment>(lab, s)->prefix4));
  for (const Prefix& d : usual_defaults()) EXPECT_FALSE(d.overlaps(*lab.numbering.block));
}

TEST(Plan, FullBlockIsRefusedWithItsName) {
  World w;
  w.lab.numbering.block = prefix("172.22.10.0/24");
  w.add_segment("Yard", "");
  const auto edit = suggest_addresses(w.lab);
  ASSERT_FALSE(edit);
  EXPECT_NE(english(edit.error()).find("Yard"), std::string::npos) << english(edit.error());
}

TEST(Plan, FullSegmentIsRefused) {
  World w;
  const SegmentId s = w.add_segment("Yard", "172.22.60.0/30");
  for (int i = 0; i < 3; ++i) w.add_card(w.add_machine("host"), s);
  EXPECT_FALSE(suggest_addresses(w.lab));
}

TEST(Plan, Ipv6RepeatsTheDigits) {
  World w;
  suggested(w, w.pilot_deck);
  PlanOptions options;
  options.ipv6 = true;
  const Lab lab = planned(w.lab, options);
  const Segment* deck = find<Segment>(lab, w.deck);
  ASSERT_TRUE(deck->prefix6);
  EXPECT_EQ(deck->prefix6->length(), 64);
  const Card* c = find<Card>(lab, w.pilot_deck);
  ASSERT_EQ(c->addresses.size(), 2U);
  EXPECT_EQ(to_text(*c->addresses[1].address), "fd12:3456:789a:2::10"); // the second segment
}

TEST(Plan, RangesAndMacs) {
  World w;
  w.segment(w.crew).ranges.clear();
  w.card(w.pilot_deck).dhcp = DhcpDuty::server;
  w.card(w.desk_deck).mac_source = MacSource::derived;
  const Lab lab = planned(w.lab);
  EXPECT_EQ(find<Segment>(lab, w.crew)->ranges, (std::vector{range("172.22.50.100", "172.22.50.199")}));
  EXPECT_EQ(find<Card>(lab, w.pilot_deck)->ranges, (std::vector{range("172.22.10.100", "172.22.10.199")}));
  EXPECT_EQ(find<Card>(lab, w.desk_deck)->mac, derived_mac(w.lab.facts.uid, 0, w.desk_deck.number));
}

// On random healthy growth: the same result twice, nothing left to do, no error that was not there, typed
// addresses where they were.
TEST(Plan, IsStableAndBringsNoError) {
  Random random(9);
  for (int i = 0, n = scaled(300); i < n; ++i) {
    World w;
    std::vector<SegmentId> segments{w.deck, w.hold, w.crew, w.add_segment("Yard", "172.22.60.0/28")};
    segments.push_back(w.add_segment("Pier", ""));
    for (std::size_t k = random.below(12); k > 0; --k) {
      const MachineId m = w.add_machine("m" + std::to_string(k));
      for (std::size_t c = 1 + random.below(3); c > 0; --c) {
        const SegmentId s = segments[random.below(segments.size())];
        const CardId id = w.add_card(m, s);
        if (random.chance(10) && s == w.deck) {
          CardAddress& a = w.card(id).addresses.emplace_back();
          a.kind = AddressKind::suggested;
          a.address = Address::v4(0xac160a00U + static_cast<std::uint32_t>(random.below(256)));
        }
      }
    }
    const auto edit = suggest_addresses(w.lab);
    if (!edit) continue; // 172.22.60.0/28 may be full
    const Lab once = planned(w.lab);
    EXPECT_EQ(once, planned(w.lab));
    const auto again = suggest_addresses(once);
    ASSERT_TRUE(again);
    EXPECT_TRUE(again->empty());
    for (const char* rule : {"address-twice", "address-outside", "address-broadcast", "address-in-dhcp",
                             "segments-overlap", "address-missing"})
      EXPECT_TRUE(places_of(once, rule).empty()) << rule;
    for (std::size_t c = 0; c < w.lab.cards.size(); ++c)
      for (std::size_t r = 0; r < w.lab.cards[c].addresses.size(); ++r)
        if (w.lab.cards[c].addresses[r].kind == AddressKind::typed) {
          EXPECT_EQ(w.lab.cards[c].addresses[r], once.cards[c].addresses[r]);
        }
  }
}

TEST(NextFree, IsWhatTheFixOffers) {
  World w;
  const Index index(w.lab);
  const AddressesInUse in_use(index);
  EXPECT_EQ(next_free(index, in_use, w.deck, w.guest), address("172.22.10.41")); // guest has .41 on Hold
  EXPECT_EQ(next_free(index, in_use, w.deck, w.desk), address("172.22.10.11"));
  EXPECT_EQ(next_free(index, in_use, w.lane, w.desk), address("192.168.40.12"));
}

} // namespace snug::test
