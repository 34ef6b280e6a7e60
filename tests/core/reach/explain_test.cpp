#include "core/reach/explain.h"

#include "tests/support/told.h"

namespace snug::test {
namespace {

TEST(Explain, NeighboursReachEachOther) {
  World w;
  const Told t = ask(w.lab, between(w.pilot, w.router));
  EXPECT_EQ(t.verdict, Reached::reaches);
  EXPECT_EQ(t.id, "reach-ok");
}

TEST(Explain, NobodyOutsideKnowsAnAddressOfTheLab) {
  World w;
  const Told t = ask(w.lab, between(kOutside, w.pilot));
  EXPECT_EQ(t.verdict, Reached::does_not_reach);
  EXPECT_EQ(t.id, "reach-no-way-in") << t.sentence;
}

// A translator knows its own segment only; the router before it has to put its own address in.
TEST(Explain, AnswersThatATranslatorCannotBringBack) {
  World w;
  w.card(w.router_deck).forwards4 = w.card(w.router_crew).forwards4 = true;
  Route out, in;
  out.via = address("172.22.50.1");
  w.machine(w.router).routes = {out};
  in.via = w.card(w.router_deck).addresses[0].address;
  w.machine(w.pilot).routes = {in};
  const Told t = ask(w.lab, between(w.pilot, kOutside));
  EXPECT_EQ(t.verdict, Reached::one_way);
  EXPECT_EQ(t.id, "reach-answer-lost") << t.sentence;
  w.card(w.router_crew).translates = true;
  EXPECT_EQ(ask(w.lab, between(w.pilot, kOutside)).verdict, Reached::reaches);
}

TEST(Explain, WhoDoesNotAnswerPingIsSaidSo) {
  World w;
  Role role;
  role.id = RoleId{w.lab.facts.next_id++};
  role.key = "silent";
  role.answers_ping = Known::no;
  w.lab.roles.push_back(role);
  w.machine(w.router).role = role.id;
  const Told t = ask(w.lab, between(w.pilot, w.router));
  EXPECT_EQ(t.verdict, Reached::reaches) << "packets arrive all the same";
  EXPECT_EQ(t.id, "reach-ok-silent");
  ReachQuestion tcp = between(w.pilot, w.router);
  tcp.transport = Transport::tcp;
  EXPECT_EQ(ask(w.lab, tcp).id, "reach-ok");
}

// What leaves by the house's router is lost there, and the sentence names who sent it that way.
TEST(Explain, WhatIsSentOutOfTheLabIsLost) {
  World w;
  w.segment(w.hold).pc_socket = false;
  const Told t = ask(w.lab, between(AnyId{Kind::pc, 0}, w.guest));
  EXPECT_EQ(t.verdict, Reached::does_not_reach);
  EXPECT_EQ(t.id, "reach-no-socket") << t.sentence;
  EXPECT_NE(t.sentence.find("a socket on Hold"), std::string::npos) << t.sentence;
  w.machine(w.desk).routes.clear();
  const Told sent = ask(w.lab, between(w.desk, w.guest));
  EXPECT_EQ(sent.id, "reach-sent-out") << sent.sentence;
  EXPECT_NE(sent.sentence.find("routes of desk"), std::string::npos) << sent.sentence;
}

TEST(Explain, WhoHasABroadcastAddressIsNamed) {
  World w;
  w.card(w.desk_deck).addresses[0].address = address("172.22.10.255");
  w.card(w.desk_deck).addresses[0].kind = AddressKind::typed;
  ReachQuestion q = between(w.pilot, w.desk);
  q.target = address("172.22.10.255");
  const Told t = ask(w.lab, q);
  EXPECT_EQ(t.id, "reach-refused-of") << t.sentence;
  EXPECT_NE(t.sentence.find("Give desk another"), std::string::npos) << t.sentence;
}

// Translators leave the PC somewhere even if the plan does not name the LAN.
TEST(Explain, ThePcGetsOutWhereItsGuestsDo) {
  World w;
  w.lab.lans.clear();
  w.segment(w.lane).lan = {};
  EXPECT_EQ(ask(w.lab, between(AnyId{Kind::pc, 0}, kOutside)).verdict, Reached::reaches);
  for (Segment& s : w.lab.segments) s.type = SegmentKind::isolated;
  const Told t = ask(w.lab, between(AnyId{Kind::pc, 0}, kOutside));
  EXPECT_EQ(t.verdict, Reached::does_not_reach);
  EXPECT_EQ(t.id, "reach-no-lan") << t.sentence;
}

TEST(Explain, AMachineThatIsOffDoesNotAnswer) {
  World w;
  Exercise e;
  e.id.number = w.lab.facts.next_id++;
  e.on = {w.pilot};
  w.lab.exercises.push_back(e);
  const Told t = ask(w.lab, between(w.pilot, w.router), e.id);
  EXPECT_EQ(t.verdict, Reached::does_not_reach);
  EXPECT_EQ(t.id, "reach-holder-off");
  EXPECT_EQ(ask(w.lab, between(w.router, w.pilot), e.id).id, "reach-off");
}

TEST(Explain, AnAddressThatTwoHaveIsUnreliable) {
  World w;
  const MachineId twin = w.add_machine("twin");
  const Address a = *w.card(w.pilot_deck).addresses.front().address;
  w.add_card(twin, w.deck, to_text(a));
  const Told t = ask(w.lab, between(w.router, w.pilot));
  EXPECT_EQ(t.verdict, Reached::unreliable);
  EXPECT_EQ(t.id, "reach-unsure");
}

TEST(Explain, AServiceIsOfferedOrNot) {
  World w;
  ReachQuestion q = between(w.router, w.pilot);
  q.transport = Transport::tcp;
  q.port = 7450;
  EXPECT_EQ(ask(w.lab, q).id, "reach-not-offered");
  Offer& o = w.machine(w.pilot).offers.emplace_back();
  o.service = "log";
  o.port = 7450;
  EXPECT_EQ(ask(w.lab, q).verdict, Reached::reaches);
}

TEST(Explain, BehindATranslatorLieTheHouseAndTheOutsideButNotTheOtherWay) {
  World w;
  const MachineId crew = w.add_machine("hand");
  w.add_card(crew, w.crew, "172.22.50.30");
  EXPECT_EQ(ask(w.lab, between(crew, kOutside)).id, "reach-no-route");
  Route& r = w.machine(crew).routes.emplace_back();
  r.via = address("172.22.50.1");
  EXPECT_EQ(ask(w.lab, between(crew, kOutside)).verdict, Reached::reaches);
  EXPECT_EQ(ask(w.lab, between(crew, w.lan)).verdict, Reached::reaches);
  EXPECT_EQ(ask(w.lab, between(crew, w.desk)).verdict, Reached::reaches)
      << ask(w.lab, between(crew, w.desk)).sentence;
  EXPECT_EQ(ask(w.lab, between(kOutside, crew)).verdict, Reached::does_not_reach);
}

TEST(Explain, JumboFramesOnOneSideOnly) {
  World w;
  w.segment(w.deck).mtu = 9000;
  w.card(w.pilot_deck).mtu = 1500;
  ReachQuestion q = between(w.router, w.pilot);
  EXPECT_EQ(ask(w.lab, q).verdict, Reached::reaches);
  q.full_size = true;
  const Told t = ask(w.lab, q);
  EXPECT_EQ(t.verdict, Reached::does_not_reach);
  EXPECT_EQ(t.id, "reach-too-big");
  q.transport = Transport::tcp; // both ends agree on the smaller size
  EXPECT_EQ(ask(w.lab, q).verdict, Reached::reaches);
}

} // namespace
} // namespace snug::test
