#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {

namespace {

using Ids = std::vector<AnyId>;
using enum Severity;

SegmentTag tag(SegmentId s, std::int32_t vlan) {
  SegmentTag t;
  t.segment = s;
  t.vlan = vlan;
  return t;
}

PortForward forward(std::int32_t port, MachineId m) {
  PortForward p;
  p.port = port;
  p.to_port = 80;
  p.machine = m;
  return p;
}

const std::vector<RuleCase> kCases{
    {"segment-no-prefix", note, false,
     [](World& w) {
       const SegmentId s = w.add_segment("Bare", "");
       w.add_card(w.desk, s);
       return Ids{s};
     }},
    {"segment-empty", note, false, [](World& w) { return Ids{w.add_segment("Bare", "172.22.90.0/24")}; }},
    {"segment-name-twice", caution, false,
     [](World& w) {
       w.segment(w.hold).name = "Deck";
       return Ids{w.deck, w.hold};
     }},
    {"card-unplugged", note, false, [](World& w) { return Ids{w.add_card(w.desk, {})}; }},
    {"machine-no-card", note, false, [](World& w) { return Ids{w.add_machine("mute")}; }},
    {"nat-lan-unknown", caution, false,
     [](World& w) {
       w.segment(w.crew).lan = w.lan;
       w.its_lan().gateway4.reset();
       return Ids{w.crew, w.lan};
     }},
    {"nat-ipv6", caution, false,
     [](World& w) {
       w.segment(w.crew).prefix6 = prefix("fd12:3456:789a:50::/64");
       return Ids{w.crew};
     }},
    {"forward-twice", error, false,
     [](World& w) {
       w.segment(w.crew).forwards = {forward(8080, w.router), forward(8080, w.router)};
       return Ids{w.crew};
     }},
    {"forward-elsewhere", error, false,
     [](World& w) {
       w.segment(w.crew).forwards = {forward(8080, w.desk)};
       return Ids{w.crew, w.desk};
     }},
    {"bridged-no-lan", error, true,
     [](World& w) {
       w.segment(w.lane).lan = {};
       return Ids{w.lane};
     }},
    {"bridged-prefix", error, true,
     [](World& w) {
       w.segment(w.lane).prefix4 = prefix("192.168.41.0/24");
       return Ids{w.lane, w.lan};
     }},
    {"bridged-wireless", error, false,
     [](World& w) {
       w.its_lan().medium = Medium::wireless;
       w.card(w.rack_hold).segment = w.lane;
       w.card(w.rack_hold).carries = {tag(w.lane, 0)};
       w.card(w.guest_hold).segment = w.lane;
       return Ids{w.rack, w.lane};
     }},
    {"segment-not-carried", caution, true,
     [](World& w) {
       w.card(w.rack_hold).carries.clear();
       return Ids{w.rack, w.hold};
     }},
    {"segment-not-carried", caution, true, // no card of the hypervisor is on it: the fix adds one
     [](World& w) {
       const SegmentId s = w.add_segment("Far", "172.22.60.0/24");
       w.add_card(w.guest, s, "172.22.60.41");
       return Ids{w.rack, s};
     }},
    {"segment-not-carried", caution, true, // the card that carries it is out
     [](World& w) {
       w.card(w.rack_hold).connected = false;
       return Ids{w.rack, w.hold};
     }},
    {"loop", error, true,
     [](World& w) {
       const CardId second = w.add_card(w.rack, w.hold);
       w.card(second).carries = {tag(w.hold, 0)};
       return Ids{w.rack_hold, second, w.hold};
     }},
    {"macs-unknown", note, false,
     [](World& w) {
       w.segment(w.hold).passes_other_macs = Known::unknown;
       return Ids{w.rack_hold, w.hold};
     }},
    {"macs-not-passed", error, true,
     [](World& w) {
       w.segment(w.hold).passes_other_macs = Known::no;
       return Ids{w.rack_hold, w.hold};
     }},
    {"own-mac-only", error, true,
     [](World& w) {
       w.card(w.rack_hold).own_mac_only = true;
       return Ids{w.rack_hold};
     }},
    {"untagged-twice", error, false,
     [](World& w) {
       w.card(w.rack_hold).carries.push_back(tag(w.crew, 0));
       return Ids{w.rack_hold};
     }},
    {"vlan-twice", error, false,
     [](World& w) {
       w.card(w.rack_hold).trunk = {tag(w.deck, 7), tag(w.crew, 7)};
       return Ids{w.rack_hold};
     }},
    {"vlan-differs", caution, true,
     [](World& w) {
       w.segment(w.crew).vlan = 50;
       w.card(w.rack_hold).trunk = {tag(w.crew, 51)};
       return Ids{w.rack_hold, w.crew};
     }},
    {"mtu-over", error, true,
     [](World& w) {
       w.card(w.desk_deck).mtu = 9000;
       return Ids{w.desk_deck, w.deck};
     }},
    {"mtu-under", caution, true,
     [](World& w) {
       w.segment(w.deck).mtu = 9000;
       w.card(w.desk_deck).mtu = 1500;
       return Ids{w.desk_deck, w.deck};
     }},
    {"mtu-ipv6", error, true, // RFC 8200 5
     [](World& w) {
       w.segment(w.deck).prefix6 = prefix("fd12:3456:789a:10::/64");
       w.segment(w.deck).mtu = 1279;
       return Ids{w.deck};
     }},
};

} // namespace

TEST(NetworkRules, EachFiresAndItsFixHelps) {
  for (const RuleCase& c : kCases) check_case(c);
}

TEST(NetworkRules, BridgedWiredCountsWhoSends) {
  World w;
  EXPECT_EQ(places_of(w.lab, "bridged-wired"), std::vector<std::string>{to_text(AnyId(w.lane))});
  w.card(w.desk_lane).connected = false;
  EXPECT_TRUE(places_of(w.lab, "bridged-wired").empty());
  w.card(w.desk_lane).connected = true;
  w.its_lan().medium = Medium::wireless;
  EXPECT_TRUE(places_of(w.lab, "bridged-wired").empty());
}

TEST(NetworkRules, NatReachesLanIsSaidOfEveryTranslator) {
  World w;
  EXPECT_EQ(places_of(w.lab, "nat-reaches-lan").size(), 1U);
  w.segment(w.crew).type = SegmentKind::isolated;
  EXPECT_TRUE(places_of(w.lab, "nat-reaches-lan").empty());
}

// A second carrying card would be none too many, and no repair.
TEST(NetworkRules, ACarryingCardThatIsOutIsConnectedAgain) {
  World w;
  w.card(w.rack_hold).connected = false;
  const Analysis a(w.lab);
  for (const Finding& f : a.findings()) {
    if (f.rule->id != "segment-not-carried") continue;
    EXPECT_EQ(english(f.message), "the card of rack that carries Hold to guest is not connected");
    const auto fix = a.fix(f);
    ASSERT_TRUE(fix);
    apply(w.lab, fix->edit);
  }
  EXPECT_TRUE(w.card(w.rack_hold).connected);
  EXPECT_EQ(w.lab.cards.size(), World().lab.cards.size());
}

TEST(NetworkRules, OneUplinkGroupIsNoLoop) {
  World w;
  const CardId second = w.add_card(w.rack, w.hold);
  w.card(second).carries = {tag(w.hold, 0)};
  w.card(second).uplink_group = w.card(w.rack_hold).uplink_group = "team";
  EXPECT_TRUE(places_of(w.lab, "loop").empty());
}

TEST(NetworkRules, InnerPieceThatIsCarriedTwoLevelsUpIsJoined) {
  World w;
  const MachineId inner = w.add_machine("inner", w.rack);
  const CardId uplink = w.add_card(inner, w.hold);
  const MachineId deep = w.add_machine("deep", inner);
  w.add_card(deep, w.hold, "172.22.20.51");
  EXPECT_EQ(places_of(w.lab, "segment-not-carried"),
            std::vector<std::string>{to_text(AnyId(inner)) + " " + to_text(AnyId(w.hold))});
  w.card(uplink).carries = {tag(w.hold, 0)};
  EXPECT_TRUE(places_of(w.lab, "segment-not-carried").empty());
}

} // namespace snug::test
