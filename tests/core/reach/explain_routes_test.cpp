#include "tests/support/told.h"

namespace snug::test {
namespace {

TEST(Explain, WhoHasNoAddressBesideTheOtherIsToldSo) {
  World w;
  const MachineId fresh = w.add_machine("fresh");
  EXPECT_EQ(ask(w.lab, between(fresh, w.desk)).id, "reach-no-card");
  Card card;
  card.id = CardId{w.lab.facts.next_id++};
  card.machine = fresh;
  card.segment = w.deck;
  w.lab.cards.push_back(card);
  const Told t = ask(w.lab, between(fresh, w.desk));
  EXPECT_EQ(t.id, "reach-unaddressed") << t.sentence;
  EXPECT_NE(t.sentence.find("fresh has no address on Deck"), std::string::npos) << t.sentence;
}

TEST(Explain, TheAnswerNeedsARouteToo) {
  World w;
  const MachineId far = w.add_machine("far");
  w.add_card(far, w.hold, "172.22.20.78");
  const MachineId middle = w.add_machine("middle");
  w.card(w.add_card(middle, w.hold, "172.22.20.1")).forwards4 = true;
  w.card(w.add_card(middle, w.deck, "172.22.10.9")).forwards4 = true;
  Route& r = w.machine(far).routes.emplace_back();
  r.via = address("172.22.20.1");
  const Told t = ask(w.lab, between(far, w.pilot));
  EXPECT_EQ(t.verdict, Reached::one_way);
  EXPECT_EQ(t.id, "reach-no-route-back");
  EXPECT_EQ(ask(w.lab, between(w.pilot, far)).id, "reach-no-route");
}

TEST(Explain, AnAddressOutsideItsSegmentsPrefixIsToldFirst) {
  World w;
  w.card(w.pilot_deck).addresses.front().address = address("172.22.11.10");
  for (const auto& [from, to] : {std::pair(w.router, w.pilot), {w.pilot, w.router}, {w.desk, w.pilot}}) {
    const Told t = ask(w.lab, between(from, to));
    EXPECT_EQ(t.id, "reach-misplaced") << t.sentence;
    EXPECT_TRUE(
        t.sentence.starts_with("pilot has 172.22.11.10 on Deck, which is outside the prefix 172.22.10.0/24"))
        << t.sentence;
  }
}

// dealer gives out addresses on Deck, client asks for one.
struct Clients {
  World w;
  MachineId dealer = w.add_machine("dealer"), client = w.add_machine("client");
  CardId deals = w.add_card(dealer, w.deck, "172.22.10.50"), asks = w.add_card(client, w.deck);
  Clients() {
    w.card(deals).dhcp = DhcpDuty::server;
    w.card(deals).ranges = {range("172.22.10.100", "172.22.10.100")};
    w.card(asks).addresses.emplace_back().kind = AddressKind::dhcp;
  }
};

TEST(Explain, WhoGotNoLeaseIsToldSoAsSenderAndAsTarget) {
  Clients c;
  EXPECT_EQ(ask(c.w.lab, between(c.client, c.w.pilot)).verdict, Reached::reaches);
  const MachineId late = c.w.add_machine("late");
  c.w.card(c.w.add_card(late, c.w.deck)).addresses.emplace_back().kind = AddressKind::dhcp;
  for (const auto& [from, to] : {std::pair(late, c.w.pilot), {c.w.pilot, late}}) {
    const Told t = ask(c.w.lab, between(from, to));
    EXPECT_EQ(t.id, "reach-range-used") << t.sentence;
    EXPECT_NE(t.sentence.find("dealer has none left on Deck"), std::string::npos) << t.sentence;
  }
  c.w.card(c.deals).dhcp = DhcpDuty::none;
  for (const auto& [from, to] : {std::pair(late, c.w.pilot), {c.w.pilot, late}})
    EXPECT_EQ(ask(c.w.lab, between(from, to)).id, "reach-no-lease");
}

TEST(Explain, AServerThatIsOffGivesNobodyAnAddress) {
  Clients c;
  Exercise e;
  e.id.number = c.w.lab.facts.next_id++;
  e.on = {c.client, c.w.pilot};
  c.w.lab.exercises.push_back(e);
  const Told t = ask(c.w.lab, between(c.client, c.w.pilot), e.id);
  EXPECT_EQ(t.id, "reach-server-off") << t.sentence;
  EXPECT_NE(t.sentence.find("Switch dealer on"), std::string::npos) << t.sentence;
}

TEST(Explain, ALeaseThatWouldHaveLedOutsideIsMissed) {
  Clients c; // with a second card, so that it has an address
  c.w.add_card(c.client, c.w.hold, "172.22.20.60");
  c.w.card(c.deals).ranges.clear();
  EXPECT_EQ(ask(c.w.lab, between(c.client, kOutside)).id, "reach-no-lease");
}

// Neither its guests, those behind its translators nor those bridged to it get out.
TEST(Explain, ALanWithoutGatewayLeadsNowhere) {
  World w;
  const MachineId hand = w.add_machine("hand");
  w.card(w.add_card(hand, w.crew)).addresses.emplace_back().kind = AddressKind::dhcp;
  const MachineId flat = w.add_machine("flat");
  w.card(w.add_card(flat, w.lane)).addresses.emplace_back().kind = AddressKind::dhcp;
  EXPECT_EQ(ask(w.lab, between(hand, kOutside)).verdict, Reached::reaches);
  EXPECT_EQ(ask(w.lab, between(flat, kOutside)).verdict, Reached::reaches);
  w.its_lan().gateway4.reset();
  for (const AnyId from : {AnyId(hand), AnyId(flat), AnyId{Kind::pc, 0}}) {
    const Told t = ask(w.lab, between(from, kOutside));
    EXPECT_EQ(t.id, "reach-no-gateway") << t.sentence;
    EXPECT_NE(t.sentence.find("Enter the gateway of house LAN"), std::string::npos) << t.sentence;
  }
}

// Who asks by DHCP on a LAN is told what is lacking there, the translator too.
TEST(Explain, ALanWhoseAddressesNobodyEnteredGivesNone) {
  World w;
  const MachineId hand = w.add_machine("hand"), flat = w.add_machine("flat");
  w.card(w.add_card(hand, w.crew)).addresses.emplace_back().kind = AddressKind::dhcp;
  w.card(w.add_card(flat, w.lane)).addresses.emplace_back().kind = AddressKind::dhcp;
  w.segment(w.crew).lan = w.lan;
  w.segment(w.lane).prefix4.reset();
  w.its_lan().prefix4.reset();
  for (const MachineId from : {hand, flat}) {
    const Told t = ask(w.lab, between(from, kOutside));
    EXPECT_EQ(t.id, "reach-lan-unknown") << t.sentence;
    EXPECT_NE(t.sentence.find("the gateway of house LAN"), std::string::npos) << t.sentence;
  }
}

TEST(Explain, WhereNothingLeadsOutsideNoRouteHelps) {
  World w;
  w.machine(w.desk).routes.clear();
  EXPECT_EQ(ask(w.lab, between(w.pilot, kOutside)).id, "reach-no-route");
  w.card(w.router_deck).forwards4 = w.card(w.router_crew).forwards4 = false;
  const Told alone = ask(w.lab, between(w.pilot, kOutside));
  EXPECT_EQ(alone.id, "reach-no-next-hop");
  EXPECT_NE(alone.sentence.find("nobody else on Deck passes"), std::string::npos) << alone.sentence;
  for (Segment& s : w.lab.segments) s.type = SegmentKind::isolated, s.lan = {};
  w.lab.lans.clear();
  EXPECT_EQ(ask(w.lab, between(w.pilot, kOutside)).id, "reach-no-exit");
}

TEST(Explain, NobodyGetsInThroughATranslator) {
  World w;
  const MachineId hand = w.add_machine("hand"), other = w.add_machine("other");
  w.add_card(hand, w.crew, "172.22.50.30");
  const SegmentId far = w.add_segment("Far", "172.22.60.0/24");
  w.segment(far).type = SegmentKind::nat;
  w.add_card(other, far, "172.22.60.30");
  const auto lead = [&](MachineId m, const char* via) {
    w.machine(m).routes = {Route{}};
    w.machine(m).routes.front().via = address(via);
  };
  lead(hand, "172.22.50.1");
  lead(other, "172.22.60.1");
  EXPECT_EQ(ask(w.lab, between(hand, other)).id, "reach-both-behind");
  for (const AnyId from : {AnyId(w.lan), kOutside}) {
    const Told t = ask(w.lab, between(from, other));
    EXPECT_EQ(t.id, "reach-behind") << t.sentence;
    EXPECT_NE(t.sentence.find("behind the translator of Far"), std::string::npos) << t.sentence;
  }
}

} // namespace
} // namespace snug::test
