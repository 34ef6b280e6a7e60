#include "core/reach/promises.h"
#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {

namespace {

using Ids = std::vector<AnyId>;
using enum Severity;

const AnyId kOutside{Kind::outside, 0}, kEveryone{Kind::everyone, 0}, kPc{Kind::pc, 0};

PromiseId promise(World& w, AnyId from, AnyId to, PromiseKind must = PromiseKind::reach) {
  Promise p;
  p.id.number = w.lab.facts.next_id++;
  p.from = from;
  p.to = to;
  p.must = must;
  w.lab.promises.push_back(p);
  return p.id;
}

void need(World& w, MachineId who, const char* service, MachineId from = {}, Strength s = Strength::wants) {
  Need& n = w.machine(who).needs.emplace_back();
  n.service = service;
  n.from = from;
  n.strength = s;
}

void route(World& w, MachineId m, const char* to, const char* via) {
  Route& r = w.machine(m).routes.emplace_back();
  r.to = prefix(to);
  r.via = address(via);
}

// On Crew, behind the router.
MachineId quay(World& w) {
  const MachineId m = w.add_machine("quay");
  w.add_card(m, w.crew, "172.22.50.42");
  return m;
}

const std::vector<RuleCase> kCases{
    {"promise-broken", error, false,
     [](World& w) {
       const MachineId m = quay(w); // no way back
       return Ids{promise(w, w.desk, m), w.desk, m};
     }},
    {"promise-broken", error, false,
     [](World& w) {
       return Ids{promise(w, w.hold, kOutside), w.hold};
     }}, // guest has no router
    {"isolation-broken", error, false,
     [](World& w) {
       const MachineId m = quay(w);
       route(w, m, "172.22.10.0/24", "172.22.50.3");
       return Ids{promise(w, w.deck, w.crew, PromiseKind::never), w.deck, w.crew};
     }},
    {"isolation-broken", error, false, // packets arrive, the answer has no way
     [](World& w) {
       const MachineId m = quay(w);
       return Ids{promise(w, w.desk, m, PromiseKind::never), w.desk, m};
     }},
    {"need-unreachable", caution, false,
     [](World& w) {
       need(w, w.guest, "names");
       return Ids{w.guest, w.pilot};
     }},
    {"need-unreachable", error, false,
     [](World& w) {
       need(w, w.guest, "time", w.pilot, Strength::must);
       return Ids{w.guest, w.pilot};
     }},
    {"need-not-offered", caution, false,
     [](World& w) {
       need(w, w.desk, "database");
       return Ids{w.desk};
     }},
    {"need-not-offered", error, false,
     [](World& w) {
       need(w, w.desk, "database", w.pilot, Strength::must);
       return Ids{w.desk, w.pilot};
     }},
    {"path-asymmetric", caution, false,
     [](World& w) {
       const MachineId m = quay(w), other = w.add_machine("side door");
       const CardId in = w.add_card(other, w.deck, "172.22.10.2"),
                    out = w.add_card(other, w.crew, "172.22.50.4");
       w.card(in).forwards4 = w.card(out).forwards4 = true;
       route(w, m, "172.22.10.0/24", "172.22.50.4");
       promise(w, w.desk, m);
       return Ids{w.desk, m};
     }},
    {"pc-forwards", caution, true,
     [](World& w) {
       w.lab.pc.forwards = true;
       w.segment(w.hold).pc_socket = true;
       return Ids{kPc, w.deck, w.hold};
     }},
    {"storage-outside", caution, false,
     [](World& w) {
       w.card(w.router_crew).for_storage = true;
       return Ids{w.router_crew, w.crew};
     }},
    {"storage-outside", caution, false,
     [](World& w) {
       Share share;
       share.id = ShareId{w.lab.facts.next_id++};
       share.machine = w.router;
       share.name = "pool";
       share.card = w.router_crew;
       w.lab.shares.push_back(share);
       return Ids{w.router_crew, w.crew};
     }},
    {"storage-outside", caution, false,
     [](World& w) {
       w.card(w.desk_lane).for_migration = true;
       return Ids{w.desk_lane, w.lane};
     }},
};

} // namespace

TEST(ReachRules, EachFiresAndItsFixHelps) {
  for (const RuleCase& c : kCases) check_case(c);
}

TEST(ReachRules, KeptPromisesAreSilent) {
  World w;
  const MachineId m = quay(w);
  route(w, m, "172.22.10.0/24", "172.22.50.3");
  promise(w, w.desk, m);
  promise(w, w.deck, w.pilot);
  promise(w, w.hold, w.deck, PromiseKind::never);
  promise(w, w.hold, kOutside, PromiseKind::never);
  promise(w, kOutside, w.hold, PromiseKind::never);
  promise(w, kEveryone, w.guest, PromiseKind::never);
  need(w, w.desk, "names");
  need(w, w.pilot, "time");
  for (const char* rule : {"promise-broken", "isolation-broken", "need-unreachable", "path-asymmetric"})
    EXPECT_TRUE(places_of(w.lab, rule).empty()) << rule;
}

TEST(ReachRules, AWayBackThatIsOffInAnExerciseIsNotToldThere) {
  World w;
  const MachineId m = quay(w), other = w.add_machine("side door");
  const CardId in = w.add_card(other, w.deck, "172.22.10.2"), out = w.add_card(other, w.crew, "172.22.50.4");
  w.card(in).forwards4 = w.card(out).forwards4 = true;
  route(w, m, "172.22.10.0/24", "172.22.50.4");
  promise(w, w.desk, m);
  Exercise e;
  e.id.number = w.lab.facts.next_id++;
  e.name = "No side door";
  for (const Machine& x : w.lab.machines)
    if (x.id != other) e.on.push_back(x.id);
  w.lab.exercises.push_back(e);
  const Analysis a(w.lab);
  const auto found = std::find_if(a.findings().begin(), a.findings().end(),
                                  [](const Finding& f) { return f.rule->id == "path-asymmetric"; });
  ASSERT_NE(found, a.findings().end());
  EXPECT_TRUE(holds_in(w.lab, *found, {}));
  EXPECT_FALSE(holds_in(w.lab, *found, e.id));
}

// What a machine that is also elsewhere sends from there is not the segment's.
TEST(ReachRules, APromiseOfASegmentIsAboutWhatLeavesByIt) {
  World w;
  w.add_card(w.desk, w.hold, "172.22.20.12");
  promise(w, w.hold, kOutside, PromiseKind::never);
  EXPECT_TRUE(places_of(w.lab, "isolation-broken").empty());
  route(w, w.guest, "0.0.0.0/0", "172.22.20.12"); // through desk
  for (Card& c : w.lab.cards)
    if (c.machine == w.desk) c.forwards4 = true;
  EXPECT_EQ(places_of(w.lab, "isolation-broken").size(), 1U);
}

TEST(ReachRules, PromisesOfOneExerciseCountThere) {
  World w;
  Exercise e;
  e.id.number = w.lab.facts.next_id++;
  e.name = "Desk alone";
  e.on = {w.desk};
  w.lab.exercises.push_back(e);
  const PromiseId p = promise(w, w.desk, w.pilot);
  w.lab.promises.back().exercises = {e.id};
  const Analysis a(w.lab);
  const auto found = std::find_if(a.findings().begin(), a.findings().end(),
                                  [](const Finding& f) { return f.rule->id == "promise-broken"; });
  ASSERT_NE(found, a.findings().end());
  EXPECT_EQ(found->places.front(), AnyId(p));
  EXPECT_FALSE(found->when.everything_on);
  EXPECT_TRUE(found->when.exercises[0]);
  EXPECT_EQ(found->reason.id(), "reach-holder-off");
}

TEST(ReachRules, OneFindingForAMachineAndWhoItNeeds) {
  World w;
  need(w, w.guest, "names");
  need(w, w.guest, "time");
  need(w, w.guest, "directory");
  EXPECT_EQ(places_of(w.lab, "need-unreachable").size(), 1U);
}

TEST(ReachRules, ATranslatorThatRelaysNamesIsOne) {
  World w;
  const MachineId m = quay(w);
  need(w, m, "names");
  EXPECT_TRUE(places_of(w.lab, "need-unreachable").empty());
  w.segment(w.crew).translator_names = false;
  EXPECT_EQ(places_of(w.lab, "need-unreachable").size(), 1U);
}

} // namespace snug::test
