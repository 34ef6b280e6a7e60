#include "core/gesture/duty.h"

#include "tests/support/ferries.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct Duties : Ferries {
  CardId card(const char* name, const char* on) const {
    for (const Card& c : lab.cards)
      if (c.machine == machine(lab, name).id && c.segment == segment(on)) return c.id;
    ADD_FAILURE() << name << " on " << on;
    return {};
  }
  CardId holder(const Lab& of, Duty d, const char* on) const {
    const Index index(of);
    const AddressesInUse in_use(index);
    return holder_of(index, in_use, d, segment(on));
  }
  std::string says(const Lab& then, Duty d, const char* on) const {
    std::string out;
    for (const Message& m : duty_says(lab, then, d, segment(on))) out += english(m) + "|";
    return out;
  }
  std::string refusal(const Result<Edit>& e) const { return e ? "" : english(e.error().message); }
  Segment& its(const char* name) {
    for (Segment& s : lab.segments)
      if (s.name == name) return s;
    return lab.segments.front();
  }
};

TEST(Gateway, IsTheCardsAddressAndForwards) {
  const Duties d;
  ASSERT_FALSE(d.holder(d.lab, Duty::gateway, "Steering"));
  const CardId beacon = d.card("beacon", "Steering");
  const auto edit = give_duty(d.lab, Duty::gateway, d.segment("Steering"), beacon);
  const Lab then = d.after(edit);
  EXPECT_EQ(english(edit->label), "Make beacon card 1 the gateway of Steering");
  EXPECT_EQ(to_text(*find<Segment>(then, d.segment("Steering"))->gateway4), "172.22.10.10");
  EXPECT_TRUE(find<Card>(then, beacon)->forwards4);
  EXPECT_EQ(d.holder(then, Duty::gateway, "Steering"), beacon);
  EXPECT_EQ(d.says(then, Duty::gateway, "Steering"), "172.22.10.10 is then the way out of Steering|");
}

// Who went by the old gateway goes by the new one; the new one itself goes on by the old.
TEST(Gateway, DefaultRoutesFollow) {
  Duties d;
  ASSERT_EQ(d.holder(d.lab, Duty::gateway, "Passengers"), d.card("gangway", "Passengers"));
  const auto old = *d.its("Passengers").gateway4;
  std::vector<MachineId> by_old;
  for (const Machine& m : d.lab.machines)
    for (const Route& r : m.routes)
      if (r.to.length() == 0 && r.via == old) by_old.push_back(m.id);
  ASSERT_FALSE(by_old.empty());
  const MachineId beacon = machine(d.lab, "beacon").id;
  const Lab then =
      d.after(give_duty(d.lab, Duty::gateway, d.segment("Passengers"), d.card("beacon", "Passengers")));
  const auto now = *find<Segment>(then, d.segment("Passengers"))->gateway4;
  EXPECT_NE(now, old);
  for (const MachineId m : by_old)
    EXPECT_EQ(find<Machine>(then, m)->routes.front().via, m == beacon ? old : now) << name_of(then, m);
  const auto follow = static_cast<std::size_t>(
      std::count_if(by_old.begin(), by_old.end(), [&](MachineId m) { return m != beacon; }));
  EXPECT_NE(d.says(then, Duty::gateway, "Passengers").find(std::to_string(follow) + " machine"),
            std::string::npos)
      << d.says(then, Duty::gateway, "Passengers");
}

TEST(Gateway, AMachineWithoutCardThereGetsOne) {
  const Duties d;
  const MachineId beacon = machine(d.lab, "beacon").id;
  const Lab then = d.after(give_duty(d.lab, Duty::gateway, d.segment("Cargo"), beacon));
  EXPECT_EQ(then.cards.size(), d.lab.cards.size() + 1);
  EXPECT_EQ(d.holder(then, Duty::gateway, "Cargo"), then.cards.back().id);
  EXPECT_EQ(then.cards.back().machine, beacon);
}

TEST(Gateway, TakenAwayATranslatorIsItAgain) {
  const Duties d;
  const Lab then = d.after(give_duty(d.lab, Duty::gateway, d.segment("Crew"), d.card("gangway", "Crew")));
  EXPECT_EQ(d.holder(then, Duty::gateway, "Crew"), d.card("gangway", "Crew"));
  const Edit off = take_duty(then, Duty::gateway, d.segment("Crew"));
  Lab again = then;
  ASSERT_TRUE(apply(again, off));
  EXPECT_EQ(english(off.label), "Leave Crew without gateway");
  EXPECT_FALSE(d.holder(again, Duty::gateway, "Crew"));
  EXPECT_TRUE(take_duty(again, Duty::gateway, d.segment("Crew")).empty());
}

TEST(Dhcp, ServesTheSchemesRangeWhereNobodyDoes) {
  const Duties d;
  ASSERT_FALSE(d.holder(d.lab, Duty::dhcp, "Steering"));
  const CardId beacon = d.card("beacon", "Steering");
  const auto edit = give_duty(d.lab, Duty::dhcp, d.segment("Steering"), beacon);
  const Lab then = d.after(edit);
  EXPECT_EQ(english(edit->label), "Let beacon card 1 serve DHCP on Steering");
  EXPECT_EQ(d.holder(then, Duty::dhcp, "Steering"), beacon);
  EXPECT_EQ(d.says(then, Duty::dhcp, "Steering"), "gives out 172.22.10.100 to 172.22.10.199|");
}

TEST(Dhcp, TakesOverWhatAnotherOrTheTranslatorGivesOut) {
  const Duties d;
  const CardId was = d.holder(d.lab, Duty::dhcp, "Passengers");
  ASSERT_TRUE(was);
  const auto ranges = find<Card>(d.lab, was)->ranges;
  const CardId gangway = d.card("gangway", "Passengers");
  ASSERT_NE(was, gangway);
  Lab then = d.after(give_duty(d.lab, Duty::dhcp, d.segment("Passengers"), gangway));
  EXPECT_EQ(find<Card>(then, gangway)->ranges, ranges);
  EXPECT_EQ(find<Card>(then, was)->dhcp, DhcpDuty::none);
  EXPECT_TRUE(find<Card>(then, was)->ranges.empty());
  ASSERT_TRUE(find<Segment>(d.lab, d.segment("Crew"))->translator_dhcp);
  then = d.after(give_duty(d.lab, Duty::dhcp, d.segment("Crew"), d.card("gangway", "Crew")));
  EXPECT_FALSE(find<Segment>(then, d.segment("Crew"))->translator_dhcp);
  EXPECT_EQ(d.holder(then, Duty::dhcp, "Crew"), d.card("gangway", "Crew"));
}

TEST(Dhcp, TakenAwayNobodyServes) {
  const Duties d;
  Lab then = d.lab;
  ASSERT_TRUE(apply(then, take_duty(d.lab, Duty::dhcp, d.segment("Passengers"))));
  EXPECT_FALSE(d.holder(then, Duty::dhcp, "Passengers"));
}

TEST(GiveDuty, RefusesWithTheReason) {
  Duties d;
  const SegmentId passengers = d.segment("Passengers"), crew = d.segment("Crew");
  EXPECT_EQ(d.refusal(give_duty(d.lab, Duty::gateway, passengers, d.card("gangway", "Passengers"))),
            "gangway card 1 is the gateway of Passengers already");
  EXPECT_EQ(d.refusal(give_duty(d.lab, Duty::gateway, passengers, d.card("gangway", "Crew"))),
            "gangway card 2 is not plugged into Passengers");
  EXPECT_EQ(d.refusal(give_duty(d.lab, Duty::gateway, crew, d.card("manifest", "Crew"))),
            "manifest card 1 has no fixed address on Crew: give it one first");
  EXPECT_EQ(d.refusal(give_duty(d.lab, Duty::dhcp, crew, d.card("manifest", "Crew"))),
            "manifest card 1 has no fixed address on Crew: give it one first");
  EXPECT_EQ(d.refusal(give_duty(d.lab, Duty::dhcp, passengers, d.holder(d.lab, Duty::dhcp, "Passengers"))),
            "beacon card 2 serves DHCP on Passengers already");
  d.its("Steering").kept.push_back({{}, *parse_address("172.22.10.100"), *parse_address("172.22.10.199")});
  EXPECT_EQ(d.refusal(give_duty(d.lab, Duty::dhcp, d.segment("Steering"), d.card("beacon", "Steering"))),
            "Steering has no room for a DHCP range: give it a prefix, or free numbers in it");
}

} // namespace
} // namespace snug::test
