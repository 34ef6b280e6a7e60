#include "core/reach/what_if.h"

#include "tests/support/rule_world.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug::test {
namespace {

WhatIf ask(const Lab& lab, std::vector<AnyId> off) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  return what_if(index, addresses, {}, off);
}

bool has_pair(const WhatIf& w, AnyId from, AnyId to) {
  return std::any_of(w.pairs.begin(), w.pairs.end(),
                     [&](const LostPair& p) { return p.from == from && p.to == to; });
}

TEST(WhatIf, NothingOffLosesNothing) {
  const World w;
  const WhatIf out = ask(w.lab, {});
  EXPECT_TRUE(out.off.empty() && out.pairs.empty() && out.promises.empty() && out.needs.empty());
}

TEST(WhatIf, AHypervisorTakesItsGuestsAlong) {
  const World w;
  EXPECT_EQ(ask(w.lab, {w.rack}).off, (std::vector{w.rack, w.guest}));
}

TEST(WhatIf, ARouterIsMissedByThoseBehindIt) {
  World w;
  const AnyId outside{Kind::outside, 0};
  w.lab.cards.erase(std::find_if(w.lab.cards.begin(), w.lab.cards.end(),
                                 [&](const Card& c) { return c.id == w.desk_lane; }));
  w.card(w.router_crew).translates = true;
  Route& r = w.machine(w.router).routes.emplace_back();
  r.to = prefix("0.0.0.0/0");
  r.via = address("172.22.50.1");
  Promise p;
  p.id.number = w.lab.facts.next_id++;
  p.from = w.desk;
  p.to = outside;
  w.lab.promises.push_back(p);
  for (const AnyId off : {AnyId(w.router), AnyId(w.router_crew), AnyId(w.crew)}) {
    SCOPED_TRACE(to_text(off));
    const WhatIf out = ask(w.lab, {off});
    EXPECT_TRUE(has_pair(out, w.desk, outside));
    EXPECT_FALSE(has_pair(out, w.desk, w.pilot));
    EXPECT_EQ(out.promises, std::vector{p.id});
  }
}

// Pulling the uplink's cable leaves the hypervisor on the switch inside.
TEST(WhatIf, AnUplinkIsMissedByWhatIsOutside) {
  World w;
  const MachineId store = w.add_machine("store");
  w.add_card(store, w.hold, "172.22.20.77");
  w.card(w.rack_hold).addresses.emplace_back().address = address("172.22.20.31");
  const WhatIf out = ask(w.lab, {w.rack_hold});
  EXPECT_TRUE(has_pair(out, w.guest, store));
  EXPECT_TRUE(has_pair(out, w.rack, store));
  EXPECT_FALSE(has_pair(out, w.guest, w.rack));
}

TEST(WhatIf, NeedsOfWhatStaysOn) {
  World w;
  Need& n = w.machine(w.desk).needs.emplace_back();
  n.service = "directory";
  n.strength = Strength::must;
  const WhatIf out = ask(w.lab, {w.pilot});
  ASSERT_EQ(out.needs.size(), 1U);
  EXPECT_EQ(out.needs.front().who, w.desk);
  EXPECT_EQ(out.needs.front().from, AnyId(w.pilot));
  EXPECT_TRUE(out.needs.front().must);
  EXPECT_TRUE(ask(w.lab, {w.desk}).needs.empty());
}

} // namespace
} // namespace snug::test
