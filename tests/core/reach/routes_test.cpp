#include "core/reach/reach.h"

#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

Reached ask(const Lab& lab, AnyId from, AnyId to, std::string_view target) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  Reach reach(index, addresses);
  ReachQuestion q;
  q.from = from;
  q.to = to;
  q.target = address(target);
  return reach.ask(q).verdict;
}

// pilot and desk are neighbours on Deck; desk has a second card with an address elsewhere.
struct TwoCards : World {
  TwoCards() { add_card(desk, hold, "172.22.20.9"); }
  void give_route(std::string_view via, bool on_link) {
    Route r;
    r.via = address(via);
    r.on_link = on_link;
    if (on_link) r.card = pilot_deck;
    machine(pilot).routes = {r};
  }
};

// A Linux kernel (random lab 58 of tests/kernel): a next hop that is an address of one's own card makes
// everybody a neighbour there, and any card of a neighbour answers for all its addresses (RFC 1122 3.3.4.2).
TEST(Routes, OneselfAsNextHopMakesEverybodyANeighbour) {
  TwoCards w;
  w.machine(w.pilot).routes.clear();
  EXPECT_EQ(ask(w.lab, w.pilot, w.desk, "172.22.20.9"), Reached::does_not_reach);
  const std::string own = to_text(*w.card(w.pilot_deck).addresses[0].address);
  w.give_route(own, false);
  EXPECT_EQ(ask(w.lab, w.pilot, w.desk, "172.22.20.9"), Reached::reaches);
  EXPECT_EQ(ask(w.lab, w.pilot, w.guest, "172.22.20.30"), Reached::does_not_reach) << "no card on Deck";
}

// `ip route add … onlink` refuses an own address: the route is not there.
TEST(Routes, OneselfOnLinkIsRefused) {
  TwoCards w;
  w.give_route(to_text(*w.card(w.pilot_deck).addresses[0].address), true);
  EXPECT_EQ(ask(w.lab, w.pilot, w.desk, "172.22.20.9"), Reached::does_not_reach);
}

} // namespace
} // namespace snug::test
