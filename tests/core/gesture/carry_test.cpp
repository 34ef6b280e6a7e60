#include "core/gesture/carry.h"

#include "tests/support/ferries.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct Carriage : Ferries {
  Carriage() {
    for (const Card& c : lab.cards)
      if (c.machine == machine(lab, "deck-b").id && c.segment == segment("Passengers")) hollow = c.id;
  }
  CardId hollow; // of deck-b, carries Passengers
  std::string says(const Lab& then, SegmentId s) const {
    const Analysis now(lab), later(then);
    std::string out;
    for (const Message& m : carriage_says(now, later, hollow, s)) out += english(m) + "|";
    return out;
  }
  std::string refusal(const Result<Edit>& e) const { return e ? "" : english(e.error().message); }
};

TEST(Carry, ASecondSegmentGetsAVlanId) {
  const Carriage c;
  const SegmentId cargo = c.segment("Cargo");
  const auto edit = carry(c.lab, c.hollow, cargo);
  const Lab then = c.after(edit);
  EXPECT_EQ(english(edit->label), "Let deck-b card 4 carry Cargo");
  const Card& card = *find<Card>(then, c.hollow);
  ASSERT_EQ(card.carries.size(), 2U);
  EXPECT_EQ(card.carries[0].segment, c.segment("Passengers"));
  EXPECT_EQ(card.carries[1].segment, cargo);
  EXPECT_EQ(card.carries[1].vlan, 10);
  EXPECT_EQ(c.says(then, cargo),
            "Cargo has VLAN id 10 on this card|no guest inside deck-b has a card on Cargo yet|");
}

TEST(Carry, TheVlanIdIsTheSegmentsOrThatOfOthers) {
  Carriage c;
  const SegmentId cargo = c.segment("Cargo"), crew = c.segment("Crew");
  for (Segment& s : c.lab.segments)
    if (s.id == cargo) s.vlan = 42;
  EXPECT_EQ(find<Card>(c.after(carry(c.lab, c.hollow, cargo)), c.hollow)->carries[1].vlan, 42);
  for (Card& x : c.lab.cards)
    if (!x.carries.empty() && x.carries.front().segment == crew) x.carries.front().vlan = 7;
  EXPECT_EQ(find<Card>(c.after(carry(c.lab, c.hollow, crew)), c.hollow)->carries[1].vlan, 7);
}

TEST(Carry, ALooseCardIsPluggedThere) {
  Carriage c;
  for (Card& x : c.lab.cards)
    if (x.id == c.hollow) {
      x.carries.clear();
      x.segment = {};
    }
  const Lab then = c.after(carry(c.lab, c.hollow, c.segment("Cargo")));
  EXPECT_EQ(find<Card>(then, c.hollow)->segment, c.segment("Cargo"));
  EXPECT_EQ(find<Card>(then, c.hollow)->carries.front().vlan, 0);
}

TEST(Carry, RefusesWithTheReason) {
  const Carriage c;
  CardId plain;
  for (const Card& x : c.lab.cards)
    if (x.machine == machine(c.lab, "beacon").id) plain = x.id;
  EXPECT_EQ(c.refusal(carry(c.lab, plain, c.segment("Cargo"))),
            "beacon is no hypervisor: nothing inside that its card could carry a segment to");
  EXPECT_EQ(c.refusal(carry(c.lab, c.hollow, c.segment("Passengers"))),
            "deck-b card 4 carries Passengers already");
  EXPECT_EQ(c.refusal(carry_no_more(c.lab, c.hollow, c.segment("Cargo"))),
            "deck-b card 4 does not carry Cargo");
}

// tickets-1 and tickets-db are on Passengers inside deck-a.
TEST(CarryNoMore, LeavesItsGuestsAmongThemselves) {
  Carriage c;
  for (const Card& x : c.lab.cards)
    if (x.machine == machine(c.lab, "deck-a").id && x.segment == c.segment("Passengers")) c.hollow = x.id;
  const SegmentId passengers = c.segment("Passengers");
  const Lab then = c.after(carry_no_more(c.lab, c.hollow, passengers));
  EXPECT_TRUE(find<Card>(then, c.hollow)->carries.empty());
  EXPECT_FALSE(find<Card>(then, c.hollow)->segment) << "it was there for nothing else";
  EXPECT_EQ(c.says(then, passengers),
            "on Passengers, tickets-1 and tickets-db can then talk to nobody outside deck-a|");
  Carriage back;
  back.lab = then;
  back.hollow = c.hollow;
  const Lab again = back.after(carry(then, c.hollow, passengers));
  const std::string said = back.says(again, passengers);
  EXPECT_EQ(said, "on Passengers, tickets-1 and tickets-db can then talk to beacon and gangway|");
}

// Frames of inner guests are dropped there: nothing is promised.
TEST(Carry, PromisesNothingWhereInnerMacsDoNotPass) {
  Carriage c;
  for (Segment& s : c.lab.segments)
    if (s.id == c.segment("Cargo")) s.passes_other_macs = Known::no;
  const Lab then = c.after(carry(c.lab, c.hollow, c.segment("Cargo")));
  EXPECT_EQ(c.says(then, c.segment("Cargo")), "Cargo has VLAN id 10 on this card|");
}

} // namespace
} // namespace snug::test
