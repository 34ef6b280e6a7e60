#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {

namespace {

using Ids = std::vector<AnyId>;
using enum Severity;

void retype(World& w, CardId c, std::string_view a) { w.card(c).addresses[0].address = address(a); }

const std::vector<RuleCase> kCases{
    {"address-twice", error, true, // RFC 5227
     [](World& w) {
       retype(w, w.desk_deck, "172.22.10.10");
       return Ids{w.pilot_deck, w.desk_deck};
     }},
    {"address-twice", error, true, // with the PC's socket, which stands at the scheme's place
     [](World& w) {
       retype(w, w.desk_deck, "172.22.10.254");
       return Ids{w.desk_deck, AnyId{Kind::pc, 0}};
     }},
    {"address-twice", error, true, // with the LAN's router
     [](World& w) {
       return Ids{w.add_card(w.pilot, w.lane, "192.168.40.1"), w.lan};
     }},
    {"address-outside", error, true,
     [](World& w) {
       retype(w, w.desk_deck, "172.22.11.12");
       return Ids{w.desk_deck, w.deck};
     }},
    {"address-length", error, true,
     [](World& w) {
       w.card(w.desk_deck).addresses[0].length = 16;
       return Ids{w.desk_deck, w.deck};
     }},
    {"address-broadcast", error, true, // RFC 1122 3.2.1.3
     [](World& w) {
       retype(w, w.desk_deck, "172.22.10.255");
       return Ids{w.desk_deck, w.deck};
     }},
    {"address-broadcast", error, true,
     [](World& w) {
       retype(w, w.desk_deck, "172.22.10.0");
       return Ids{w.desk_deck, w.deck};
     }},
    {"address-unusable", error, true, // RFC 6890: loopback
     [](World& w) {
       retype(w, w.desk_deck, "127.0.0.5");
       return Ids{w.desk_deck};
     }},
    {"lan-pool-unknown", caution, true,
     [](World& w) {
       w.its_lan().pool.clear();
       return Ids{w.add_card(w.pilot, w.lane, "192.168.40.60")};
     }},
    {"address-missing", note, true,
     [](World& w) {
       const CardId c = w.add_card(w.pilot, w.hold);
       return Ids{c, w.hold};
     }},
    {"carrying-address", caution, true,
     [](World& w) {
       w.card(w.rack_hold).addresses.emplace_back().address = address("172.22.20.31");
       return Ids{w.rack_hold};
     }},
    {"dhcp-on-bridged", error, true,
     [](World& w) {
       w.card(w.desk_lane).dhcp = DhcpDuty::server;
       return Ids{w.lane, w.desk_lane};
     }},
    {"advertisement-on-bridged", error, true,
     [](World& w) {
       w.card(w.desk_lane).advertises = true;
       return Ids{w.lane, w.desk_lane};
     }},
    {"dhcp-twice", error, true, // with the translator
     [](World& w) {
       w.card(w.router_crew).dhcp = DhcpDuty::server;
       w.card(w.router_crew).ranges = {range("172.22.50.200", "172.22.50.210")};
       return Ids{w.crew, w.router_crew};
     }},
    {"dhcp-nobody", error, true,
     [](World& w) {
       CardAddress& a = w.card(w.desk_deck).addresses[0];
       a = {};
       a.kind = AddressKind::dhcp;
       return Ids{w.desk_deck, w.deck};
     }},
    {"slaac-nobody", error, false,
     [](World& w) {
       w.segment(w.deck).prefix6 = prefix("fd12:3456:789a:10::/64");
       w.card(w.desk_deck).addresses.emplace_back().kind = AddressKind::slaac;
       return Ids{w.desk_deck, w.deck};
     }},
    {"relay-target", error, false,
     [](World& w) {
       w.card(w.router_deck).dhcp = DhcpDuty::relay;
       return Ids{w.router_deck};
     }},
    {"address-in-dhcp", error, true,
     [](World& w) {
       retype(w, w.router_crew, "172.22.50.103");
       return Ids{w.router_crew, w.crew};
     }},
    {"ranges-overlap", error, true,
     [](World& w) {
       w.segment(w.crew).ranges.push_back(range("172.22.50.150", "172.22.50.220"));
       return Ids{w.crew};
     }},
    {"range-outside", error, true,
     [](World& w) {
       w.segment(w.crew).ranges = {range("172.22.50.100", "172.22.51.20")};
       return Ids{w.crew};
     }},
    {"range-form", error, true,
     [](World& w) {
       w.segment(w.crew).ranges = {range("172.22.50.199", "172.22.50.100")};
       return Ids{w.crew};
     }},
    {"kept-form", error, true,
     [](World& w) {
       w.segment(w.crew).kept = {range("172.22.50.60", "172.22.50.69"), {{}, address("172.22.50.80"), {}}};
       return Ids{w.crew};
     }},
    {"dhcp-no-range", note, true,
     [](World& w) {
       w.segment(w.crew).ranges.clear();
       return Ids{w.crew};
     }},
    {"dhcp-small", error, false,
     [](World& w) {
       w.segment(w.crew).ranges = {range("172.22.50.100", "172.22.50.100")};
       for (int i = 0; i < 2; ++i)
         w.card(w.add_card(w.desk, w.crew)).addresses.emplace_back().kind = AddressKind::dhcp;
       return Ids{w.crew};
     }},
    {"segments-overlap", error, true,
     [](World& w) {
       const SegmentId s = w.add_segment("Yard", "172.22.10.128/25");
       w.add_card(w.pilot, s, "172.22.10.140");
       return Ids{w.deck, s};
     }},
    {"segment-lan-overlap", error, true,
     [](World& w) {
       const SegmentId s = w.add_segment("Yard", "192.168.0.0/16");
       w.add_card(w.pilot, s, "192.168.7.10");
       return Ids{s, w.lan};
     }},
    {"segment-place-overlap", caution, true,
     [](World& w) {
       Place p;
       p.id.number = w.lab.facts.next_id++;
       p.prefixes = {prefix("172.22.20.0/22")};
       w.lab.places.push_back(p);
       return Ids{w.hold, p.id};
     }},
    {"address-special", caution, true, // RFC 5737
     [](World& w) {
       w.segment(w.hold).prefix4 = prefix("198.51.100.0/24");
       retype(w, w.guest_hold, "198.51.100.41");
       return Ids{w.hold};
     }},
    {"address-special", error, true, // RFC 1112 4
     [](World& w) {
       w.segment(w.hold).prefix4 = prefix("250.1.1.0/24");
       retype(w, w.guest_hold, "250.1.1.41");
       return Ids{w.hold};
     }},
    {"address-public", caution, true, // RFC 1918
     [](World& w) {
       w.segment(w.hold).prefix4 = prefix("150.20.30.0/24");
       retype(w, w.guest_hold, "150.20.30.41");
       return Ids{w.hold};
     }},
    {"slaac-prefix", error, false, // RFC 4291 2.5.1
     [](World& w) {
       w.segment(w.deck).prefix6 = prefix("fd12:3456:789a:10::/80");
       w.card(w.router_deck).advertises = true;
       return Ids{w.deck};
     }},
    {"gateway-outside", error, true,
     [](World& w) {
       w.segment(w.deck).gateway4 = address("172.22.11.1");
       return Ids{w.deck};
     }},
    {"gateway-nobody", error, true,
     [](World& w) {
       w.segment(w.deck).gateway4 = address("172.22.10.2");
       return Ids{w.deck};
     }},
    {"gateway-not-forwarding", error, true,
     [](World& w) {
       w.card(w.router_deck).forwards4 = false;
       return Ids{w.deck, w.router_deck};
     }},
    {"pc-is-gateway", error, true,
     [](World& w) {
       w.segment(w.deck).pc_address4 = address("172.22.10.1");
       return Ids{AnyId{Kind::pc, 0}, w.deck};
     }},
    {"default-twice", caution, false,
     [](World& w) {
       w.machine(w.desk).routes.push_back(w.machine(w.desk).routes[0]);
       return Ids{w.desk};
     }},
    {"route-outside", error, false,
     [](World& w) {
       w.machine(w.desk).routes[0].via = address("172.22.99.1");
       return Ids{w.desk};
     }},
    {"route-nobody", error, false,
     [](World& w) {
       w.machine(w.desk).routes[0].via = address("172.22.10.77");
       return Ids{w.desk};
     }},
    {"route-not-forwarding", error, true,
     [](World& w) {
       w.machine(w.desk).routes[0].via = address("172.22.10.10");
       return Ids{w.desk, w.pilot_deck};
     }},
    {"mac-twice", error, true,
     [](World& w) {
       w.card(w.pilot_deck).mac = w.card(w.desk_deck).mac = Mac(0x02005e100007);
       return Ids{w.pilot_deck, w.desk_deck};
     }},
    {"mac-group", error, true,
     [](World& w) {
       w.card(w.desk_deck).mac = Mac(0x03005e100007);
       return Ids{w.desk_deck};
     }},
    {"mac-refused", error, true,
     [](World& w) {
       w.lab.pc.typed_macs_allowed = Known::no;
       w.card(w.desk_deck).mac = Mac(0x02005e100007);
       w.card(w.desk_deck).mac_source = MacSource::typed;
       return Ids{w.desk_deck};
     }},
};

} // namespace

TEST(AddressRules, EachFiresAndItsFixHelps) {
  for (const RuleCase& c : kCases) check_case(c);
}

// RFC 3021: both addresses of a /31 are hosts.
TEST(AddressRules, PointToPointHasNoBroadcast) {
  World w;
  const SegmentId line = w.add_segment("Line", "172.22.99.0/31");
  w.add_card(w.pilot, line, "172.22.99.0");
  w.add_card(w.router, line, "172.22.99.1");
  EXPECT_TRUE(places_of(w.lab, "address-broadcast").empty());
}

TEST(AddressRules, OneAddressOnTwoIslandsIsNoConflict) {
  World w;
  const MachineId second = w.add_machine("second");
  const MachineId inner = w.add_machine("inner", second);
  w.add_card(inner, w.hold, "172.22.20.41"); // as guest, which is inside rack
  EXPECT_TRUE(places_of(w.lab, "address-twice").empty());
  const CardId joins = w.add_card(second, w.hold);
  w.card(joins).carries.emplace_back().segment = w.hold;
  EXPECT_EQ(places_of(w.lab, "address-twice").size(), 1U);
  w.card(joins).connected = false;
  EXPECT_TRUE(places_of(w.lab, "address-twice").empty());
}

TEST(AddressRules, SegmentsBridgedToOneLanAreOneNetwork) {
  World w;
  const SegmentId other = w.add_segment("Pier", "");
  w.segment(other).type = SegmentKind::bridged;
  w.segment(other).lan = w.lan;
  w.add_card(w.pilot, w.lane, "192.168.40.50");
  w.add_card(w.router, other, "192.168.40.50");
  EXPECT_EQ(places_of(w.lab, "address-twice").size(), 1U);
  EXPECT_TRUE(places_of(w.lab, "segments-overlap").empty());
  w.segment(other).vlan = 20;
  EXPECT_TRUE(places_of(w.lab, "address-twice").empty());
}

TEST(AddressRules, SuggestedMovesBeforeTyped) {
  World w;
  w.card(w.desk_deck).addresses[0].address = address("172.22.10.10");
  w.card(w.pilot_deck).addresses[0].kind = AddressKind::suggested;
  const Analysis a(w.lab);
  for (const Finding& f : a.findings()) {
    if (f.rule->id != "address-twice") continue;
    Lab fixed = w.lab;
    ASSERT_TRUE(apply(fixed, a.fix(f)->edit));
    EXPECT_EQ(find<Card>(fixed, w.desk_deck)->addresses, w.card(w.desk_deck).addresses);
    EXPECT_NE(find<Card>(fixed, w.pilot_deck)->addresses, w.card(w.pilot_deck).addresses);
    return;
  }
  FAIL() << "no finding";
}

TEST(AddressRules, ConsentIsAnAcceptance) {
  World w;
  w.card(w.desk_lane).dhcp = DhcpDuty::server;
  Accepted a;
  a.id.number = w.lab.facts.next_id++;
  a.rule = "dhcp-on-bridged";
  a.places = {w.lane, w.desk_lane};
  a.reason = "The house is mine.";
  w.lab.accepted.push_back(a);
  const Analysis after(w.lab);
  for (const Finding& f : after.findings())
    EXPECT_TRUE(f.severity != Severity::error || f.accepted) << english(f.message);
  EXPECT_FALSE(after.has_error());
}

} // namespace snug::test
