// Findings of one kind repaired together.

#include "core/analyse/repair_alike.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

#include <set>

namespace snug {
namespace {

// Machines on a segment with a router, none of which knows a way on.
Lab without_ways() {
  Lab lab = test::sample("branch-office");
  for (Machine& m : lab.machines) m.routes.clear();
  return lab;
}

TEST(RepairAlike, GivesEveryMachineItsWayInOneStep) {
  const Lab lab = without_ways();
  const Analysis now(lab);
  const std::size_t before = alike(now, "default-missing", {});
  ASSERT_GT(before, 1U);
  const AlikeRepaired done = repair_alike(now, "default-missing", {});
  EXPECT_EQ(done.count, before);
  EXPECT_EQ(english(done.edit.label), "Repair " + std::to_string(before) + " findings");
  Lab then = lab;
  ASSERT_TRUE(apply(then, done.edit));
  EXPECT_EQ(alike(Analysis(then), "default-missing", {}), 0U);
  ASSERT_TRUE(apply(then, inverse(done.edit)));
  EXPECT_EQ(then, lab);
}

// Addresses that stand twice: each repair looks at those before it, so that no two get the same new one.
TEST(RepairAlike, LaterRepairsSeeEarlierOnes) {
  Lab lab = test::sample("branch-office");
  std::optional<Address> first;
  int made = 0;
  for (Card& c : lab.cards)
    for (CardAddress& a : c.addresses) {
      if (!a.address || !a.address->is_v4() || c.segment != lab.cards.front().segment) continue;
      if (!first) first = a.address;
      made += a.address != first ? 1 : 0;
      a.address = first;
    }
  ASSERT_GT(made, 1);
  const Analysis now(lab);
  const AlikeRepaired done = repair_alike(now, "address-twice", {});
  EXPECT_GE(done.count, 1U);
  Lab then = lab;
  ASSERT_TRUE(apply(then, done.edit));
  EXPECT_EQ(alike(Analysis(then), "address-twice", {}), 0U);
}

TEST(RepairAlike, StopsAtTheMostAndLeavesAcceptedOnes) {
  Lab lab = without_ways();
  EXPECT_EQ(repair_alike(Analysis(lab), "default-missing", {}, 1).count, 1U);
  const std::size_t all = alike(Analysis(lab), "default-missing", {});
  Accepted one;
  one.id = AcceptedId{lab.facts.next_id++};
  one.rule = "default-missing";
  one.reason = "for the exercise";
  {
    const Analysis now(lab);
    for (const Finding& f : now.findings())
      if (f.rule->id == one.rule) one.places = f.places;
  }
  lab.accepted.push_back(one);
  EXPECT_EQ(alike(Analysis(lab), "default-missing", {}), all - 1);
  EXPECT_EQ(repair_alike(Analysis(lab), "default-missing", {}).count, all - 1);
  EXPECT_TRUE(repair_alike(Analysis(lab), "no such rule", {}).edit.empty());
}

// Whatever the lab: the step fits it and is undone, and never more findings of the kind are left.
TEST(RepairAlike, OfEveryKindInRandomLabs) {
  test::Random r(23);
  std::size_t repaired = 0;
  for (int round = 0, n = test::scaled(60); round < n; ++round) {
    const Lab lab = test::plausible_lab(r, 14, 4);
    const Analysis now(lab);
    std::set<std::string_view> kinds;
    for (const Finding& f : now.findings()) kinds.insert(f.rule->id);
    for (const std::string_view kind : kinds) {
      const AlikeRepaired done = repair_alike(now, kind, {});
      EXPECT_EQ(done.edit.empty(), done.count == 0) << kind;
      repaired += done.count;
      Lab then = lab;
      ASSERT_TRUE(done.edit.empty() || apply(then, done.edit)) << kind;
      EXPECT_LE(alike(Analysis(then), kind, {}), alike(now, kind, {})) << kind;
      ASSERT_TRUE(done.edit.empty() || apply(then, inverse(done.edit)));
      EXPECT_EQ(then, lab);
    }
  }
  EXPECT_GT(repaired, 50U);
}

} // namespace
} // namespace snug
