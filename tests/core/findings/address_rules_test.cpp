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
    {"dhcp-small", error, true,
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
    {"no-way-back", caution, true,
     [](World& w) {
       const auto lead = [&](MachineId m, const char* via) {
         Route r;
         r.via = address(via);
         w.machine(m).routes = {r};
       };
       lead(w.router, "172.22.50.1");
       lead(w.pilot, "172.22.10.1");
       return Ids{w.router_crew, w.crew};
     }},
    {"pc-is-gateway", error, true,
     [](World& w) {
       w.segment(w.deck).pc_address4 = address("172.22.10.1");
       return Ids{AnyId{Kind::pc, 0}, w.deck};
     }},
    {"default-twice", caution, true,
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

// The hypervisor's own end stays on the switch inside, together with its guests.
TEST(AddressRules, ACarryingCardWithoutACableMeetsItsGuests) {
  World w;
  CardAddress& own = w.card(w.rack_hold).addresses.emplace_back();
  own.address = address("172.22.20.41"); // as guest, inside
  w.card(w.rack_hold).connected = false;
  EXPECT_EQ(places_of(w.lab, "address-twice").size(), 1U);
  w.card(w.guest_hold).connected = false;
  EXPECT_TRUE(places_of(w.lab, "address-twice").empty()) << "nobody keeps the switch up";
  w.card(w.guest_hold).connected = true;
  w.card(w.rack_hold).carries.clear();
  EXPECT_TRUE(places_of(w.lab, "address-twice").empty());
}

// Behind the range first, then before it; not where the neighbours are somebody's.
TEST(AddressRules, ASmallPoolGrowsIntoWhatIsFree) {
  for (const bool taken : {false, true}) {
    World w;
    w.segment(w.crew).ranges = {range("172.22.50.100", "172.22.50.100")};
    for (int i = 0; i < 3; ++i)
      w.card(w.add_card(w.desk, w.crew)).addresses.emplace_back().kind = AddressKind::dhcp;
    w.add_card(w.pilot, w.crew, "172.22.50.102");
    if (taken) w.add_card(w.pilot, w.crew, "172.22.50.99");
    const Analysis a(w.lab);
    for (const Finding& f : a.findings()) {
      if (f.rule->id != "dhcp-small") continue;
      const auto fix = a.fix(f);
      ASSERT_EQ(fix.has_value(), !taken);
      if (!fix) continue;
      Lab fixed = w.lab;
      ASSERT_TRUE(apply(fixed, fix->edit));
      EXPECT_EQ(find<Segment>(fixed, w.crew)->ranges,
                (std::vector<RangeRow>{range("172.22.50.99", "172.22.50.101")}));
    }
    EXPECT_EQ(places_of(w.lab, "dhcp-small").size(), 1U);
  }
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

namespace {

const Finding* first_of(const Analysis& a, std::string_view rule) {
  for (const Finding& f : a.findings())
    if (f.rule->id == rule) return &f;
  return nullptr;
}

// Labels of the repairs of the first finding about a double address; each makes it go.
std::vector<std::string> twice_labels(const Lab& lab) {
  const Analysis a(lab);
  std::vector<std::string> out;
  const Finding* f = first_of(a, "address-twice");
  if (!f) return out;
  for (const Fix& fix : a.fixes(*f)) {
    out.push_back(english(fix.label));
    Lab fixed = lab;
    EXPECT_TRUE(apply(fixed, fix.edit));
    EXPECT_TRUE(places_of(fixed, "address-twice").empty()) << out.back();
  }
  return out;
}

Promise promise_about(World& w, MachineId who) {
  Promise p;
  p.id.number = w.lab.facts.next_id++;
  p.from = who;
  p.to = w.router;
  return p;
}

} // namespace

// Either may move; the later one first where nobody names one of them.
TEST(AddressRules, EitherOfTwoMayMove) {
  World w;
  w.machine(w.pilot).offers.clear();
  retype(w, w.rack_deck, "172.22.10.12"); // as desk, whose card is the later one
  // .10 is pilot's: .11 is the first free host of the scheme.
  EXPECT_EQ(twice_labels(w.lab), (std::vector<std::string>{"Move desk to .11", "Move rack to .11"}));
}

// Who is promised, needed or a gateway keeps its address.
TEST(AddressRules, WhoIsNamedByOthersStays) {
  World w;
  retype(w, w.rack_deck, "172.22.10.12");
  w.lab.promises.push_back(promise_about(w, w.desk));
  EXPECT_TRUE(twice_labels(w.lab).front().starts_with("Move rack to ")) << "desk is promised";
  World gateway;
  retype(gateway, gateway.desk_deck, "172.22.10.1");
  EXPECT_TRUE(twice_labels(gateway.lab).front().starts_with("Move desk to ")) << "router is the gateway";
  World needed;
  const CardId late = needed.add_card(needed.add_machine("late"), needed.deck, "172.22.10.12");
  Need need;
  need.service = "names";
  need.from = needed.card(late).machine;
  needed.machine(needed.guest).needs = {need};
  EXPECT_TRUE(twice_labels(needed.lab).front().starts_with("Move desk to ")) << "late is needed";
}

// One last octet for one machine everywhere: who has left that custom goes back to it, promised or not.
TEST(AddressRules, WhoIsOutOfStepMoves) {
  World w;
  retype(w, w.rack_deck, "172.22.10.12");
  w.add_card(w.rack, w.hold, "172.22.20.12");
  w.add_card(w.desk, w.hold, "172.22.20.77");
  w.lab.promises.push_back(promise_about(w, w.desk));
  EXPECT_TRUE(twice_labels(w.lab).front().starts_with("Move desk to ")) << "rack is .12 everywhere";
}

// A hypervisor without a card for management most likely means this one; with one, the address is too much.
TEST(AddressRules, WhatACarryingCardsAddressIsFor) {
  for (const bool managed : {false, true}) {
    World w;
    w.card(w.rack_hold).addresses.emplace_back().address = address("172.22.20.31");
    w.card(w.rack_deck).for_management = managed;
    const Analysis a = analyse(w.lab);
    std::vector<std::string> labels;
    for (const Finding& f : a.findings())
      if (f.rule->id == "carrying-address")
        for (const Fix& fix : a.fixes(f)) labels.push_back(english(fix.label));
    ASSERT_EQ(labels.size(), 2U);
    EXPECT_EQ(labels[managed ? 1 : 0].find("for management") != std::string::npos, true) << labels[0];
    EXPECT_TRUE(labels[managed ? 0 : 1].starts_with("Take the address")) << labels[0];
  }
}

TEST(AddressRules, OnlyACardMoves) {
  World w;
  retype(w, w.desk_deck, "172.22.10.254"); // the PC's socket
  EXPECT_EQ(twice_labels(w.lab).size(), 1U);
}

// RFC 1122 3.3.1: without a default route a host reaches its neighbours only.
TEST(AddressRules, AFixedAddressNeedsADefaultRoute) {
  World w;
  EXPECT_EQ(places_of(w.lab, "default-missing"),
            (std::vector<std::string>{to_text(AnyId(w.router)) + " " + to_text(AnyId(w.crew)),
                                      to_text(AnyId(w.pilot)) + " " + to_text(AnyId(w.deck)),
                                      to_text(AnyId(w.rack)) + " " + to_text(AnyId(w.deck))}))
      << "not guest, whose segment has no gateway, nor desk, which has a route and asks DHCP";
  const Analysis a(w.lab);
  const Finding* f = first_of(a, "default-missing");
  ASSERT_NE(f, nullptr);
  EXPECT_EQ(f->severity, caution) << "behind a translator";
  const auto fix = a.fix(*f);
  ASSERT_TRUE(fix);
  EXPECT_EQ(english(fix->label), "Give router a default route by 172.22.50.1");
  ASSERT_TRUE(apply(w.lab, fix->edit));
  ASSERT_EQ(w.machine(w.router).routes.size(), 1U);
  EXPECT_EQ(w.machine(w.router).routes[0].via, address("172.22.50.1"));
  EXPECT_EQ(w.machine(w.router).routes[0].to, prefix("0.0.0.0/0"));
  const Analysis later(w.lab);
  EXPECT_EQ(first_of(later, "default-missing")->severity, note) << "on a segment with a router";
}

TEST(AddressRules, WhoAsksDhcpOrHasARouteIsNotTold) {
  World w;
  w.card(w.router_crew).addresses[0] = {};
  w.card(w.router_crew).addresses[0].kind = AddressKind::dhcp;
  Route some;
  some.to = prefix("10.9.0.0/16");
  some.via = address("172.22.10.1");
  w.machine(w.pilot).routes = w.machine(w.rack).routes = {some};
  EXPECT_TRUE(places_of(w.lab, "default-missing").empty());
}

// Two ways out: which one is a person's choice.
TEST(AddressRules, BetweenTwoTranslatorsNothingIsOffered) {
  World w;
  const SegmentId other = w.add_segment("Second way", "172.22.51.0/24");
  w.segment(other).type = SegmentKind::nat;
  w.add_card(w.router, other, "172.22.51.3");
  const Analysis a(w.lab);
  const Finding* f = first_of(a, "default-missing");
  ASSERT_NE(f, nullptr);
  EXPECT_EQ(f->places.front(), AnyId(w.router));
  EXPECT_FALSE(a.fix(*f));
}

// A card that only carries a segment is no way out of the machine's own.
TEST(AddressRules, AWayThatIsOnlyCarriedIsNoChoice) {
  World w;
  const SegmentId other = w.add_segment("Second way", "172.22.51.0/24");
  w.segment(other).type = SegmentKind::nat;
  const CardId carrying = w.add_card(w.router, other, "172.22.51.3");
  w.card(carrying).addresses.clear();
  const Analysis a(w.lab);
  const Finding* f = first_of(a, "default-missing");
  ASSERT_NE(f, nullptr);
  ASSERT_EQ(f->places.front(), AnyId(w.router));
  const auto fix = a.fix(*f);
  ASSERT_TRUE(fix);
  EXPECT_EQ(english(fix->label), "Give router a default route by 172.22.50.1");
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
