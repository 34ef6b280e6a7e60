#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {

namespace {

using Ids = std::vector<AnyId>;
using enum Severity;

PromiseId promise(World& w, AnyId from, AnyId to) {
  Promise p;
  p.id.number = w.lab.facts.next_id++;
  p.from = from;
  p.to = to;
  w.lab.promises.push_back(p);
  return p.id;
}

void default_route(World& w, MachineId m, const char* via) {
  Route& r = w.machine(m).routes.emplace_back();
  r.via = address(via);
}

// Stores is a segment behind a second router, which is its gateway.
struct Stores {
  explicit Stores(World& w) {
    segment = w.add_segment("Stores", "172.22.60.0/24");
    w.segment(segment).gateway4 = address("172.22.60.1");
    gate = w.add_machine("gate");
    deck_card = w.add_card(gate, w.deck, "172.22.10.2");
    own_card = w.add_card(gate, segment, "172.22.60.1");
    w.card(deck_card).forwards4 = w.card(own_card).forwards4 = true;
    shelf = w.add_machine("shelf");
    w.add_card(shelf, segment, "172.22.60.40");
    Route& r = w.machine(w.desk).routes.emplace_back();
    r.to = prefix("172.22.60.0/24");
    r.via = address("172.22.10.2");
  }
  SegmentId segment;
  MachineId gate, shelf;
  CardId deck_card, own_card;
};

const std::vector<RuleCase> kCases{
    {"promise-broken", error, true, // the answer has no way back
     [](World& w) {
       const Stores s(w);
       return Ids{promise(w, w.desk, s.shelf), w.desk, s.shelf};
     }},
    {"promise-broken", error, true, // nor has the question
     [](World& w) {
       const Stores s(w);
       return Ids{promise(w, s.shelf, w.desk), s.shelf, w.desk};
     }},
    {"promise-broken", error, true, // the router passes nothing on
     [](World& w) {
       const Stores s(w);
       default_route(w, s.shelf, "172.22.60.1");
       w.card(s.deck_card).forwards4 = false;
       return Ids{promise(w, w.desk, s.shelf), w.desk, s.shelf};
     }},
    {"promise-broken", error, false, // two gateways: a person must choose
     [](World& w) {
       const Stores s(w);
       w.add_card(s.shelf, w.crew, "172.22.50.44");
       return Ids{promise(w, w.desk, s.shelf), w.desk, s.shelf};
     }},
    {"promise-broken", error, true, // a card is out
     [](World& w) {
       const Stores s(w);
       default_route(w, s.shelf, "172.22.60.1");
       for (Card& c : w.lab.cards)
         if (c.machine == s.shelf) c.connected = false;
       return Ids{promise(w, w.desk, s.shelf), w.desk, s.shelf};
     }},
    {"promise-broken", error, true, // and packets try another way
     [](World& w) {
       w.card(w.desk_deck).connected = false;
       return Ids{promise(w, w.desk, w.pilot), w.desk, w.pilot};
     }},
    {"promise-broken", error, true, // the uplink of the hypervisor around one end
     [](World& w) {
       const MachineId store = w.add_machine("store");
       w.add_card(store, w.hold, "172.22.20.77");
       w.card(w.rack_hold).connected = false;
       return Ids{promise(w, w.guest, store), w.guest, store};
     }},
    {"need-unreachable", caution, true,
     [](World& w) {
       const Stores s(w);
       default_route(w, w.pilot, "172.22.10.2");
       w.machine(s.shelf).needs.emplace_back().service = "names";
       return Ids{s.shelf, w.pilot};
     }},
};

} // namespace

TEST(ReachFixes, EachMendsTheWay) {
  for (const RuleCase& c : kCases) check_case(c);
}

} // namespace snug::test
