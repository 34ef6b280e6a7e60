#include "core/gesture/own_part.h"

#include "core/analyse/analyse.h"
#include "core/document/new_lab.h"
#include "core/document/read.h"
#include "core/document/write.h"
#include "core/edit/history.h"
#include "core/gesture/rails.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace snug::test {
namespace {

Lab part_of(const Lab& lab, std::vector<AnyId> ids) {
  auto part = make_part(lab, ids, "Mine");
  EXPECT_TRUE(part);
  return part ? *part : Lab{};
}

std::size_t clashes(const Lab& lab) {
  const Analysis a = analyse(lab);
  return static_cast<std::size_t>(
      std::count_if(a.findings().begin(), a.findings().end(), [](const Finding& f) {
        return f.rule->id == "address-twice" || f.rule->id == "mac-twice" ||
               f.rule->id == "host-name-twice" || f.rule->id == "machine-name-twice";
      }));
}

TEST(OwnPart, HoldsWhatBelongsToTheMachines) {
  const Lab lab = sample("skerry-ferries");
  const Lab part = part_of(lab, {machine(lab, "deck-a").id});
  EXPECT_EQ(part.facts.title, "Mine");
  std::set<std::string> names;
  for (const Machine& m : part.machines) names.insert(m.name);
  EXPECT_EQ(names, (std::set<std::string>{"deck-a", "tickets-1", "tickets-db"})) << "guests come along";
  EXPECT_FALSE(part.cards.empty());
  EXPECT_FALSE(part.disks.empty());
  EXPECT_TRUE(part.exercises.empty());
  EXPECT_EQ(read_lab(write_lab(part), "part"), part) << "it is a document";
  const auto none = make_part(lab, std::vector<AnyId>{lab.segments.front().id}, "Mine");
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().message.id(), "own-part-no-machine");
}

TEST(OwnPart, SeveralAtOnceHaveIdsNamesAndAddressesOfTheirOwn) {
  const Lab lab = sample("skerry-ferries");
  const Lab part = part_of(lab, {machine(lab, "tickets-1").id, machine(lab, "tickets-db").id});
  Lab now = lab;
  History history;
  const auto placed = place_part(lab, part, 3, {machine(lab, "deck-b").id, 0, {}}, lab.exercises[0].id);
  ASSERT_TRUE(placed) << english(placed.error());
  ASSERT_TRUE(history.perform(now, placed->edit));
  EXPECT_EQ(placed->made.size(), 6U);
  EXPECT_EQ(now.machines.size(), lab.machines.size() + 6);
  for (const AnyId id : placed->made) {
    const Machine& m = *find<Machine>(now, MachineId{id.number});
    EXPECT_EQ(m.carrier, machine(lab, "deck-b").id);
    const std::vector<MachineId>& on = now.exercises[0].on;
    EXPECT_NE(std::find(on.begin(), on.end(), m.id), on.end()) << m.name;
  }
  EXPECT_EQ(clashes(now), clashes(lab));
  history.undo(now);
  EXPECT_EQ(now, lab);
}

TEST(OwnPart, StandsWhereItIsDropped) {
  const Lab lab = sample("skerry-ferries");
  const Lab part = part_of(lab, {machine(lab, "beacon").id});
  const std::vector<MachineId> before = guests_in_order(lab, {});
  const auto placed = place_part(lab, part, 1, {{}, 0, before.front()});
  ASSERT_TRUE(placed);
  Lab now = lab;
  ASSERT_TRUE(apply(now, placed->edit));
  EXPECT_EQ(AnyId(guests_in_order(now, {}).front()), placed->made.front());
  const auto refused = place_part(lab, part, 1, {machine(lab, "hold").id, 0, {}});
  EXPECT_FALSE(refused) << "hold is no hypervisor";
}

TEST(OwnPart, OnARailItHasACardThere) {
  const Lab lab = sample("skerry-ferries");
  const Lab part = part_of(lab, {machine(lab, "beacon").id});
  for (const Segment& s : lab.segments) {
    const auto placed = place_part(lab, part, 2, {}, {}, s.id);
    ASSERT_TRUE(placed) << s.name;
    Lab now = lab;
    ASSERT_TRUE(apply(now, placed->edit));
    for (const AnyId id : placed->made) {
      const auto here = std::count_if(now.cards.begin(), now.cards.end(), [&](const Card& c) {
        return AnyId(c.machine) == id && c.segment == s.id;
      });
      EXPECT_EQ(here, 1) << s.name;
    }
  }
}

TEST(OwnPart, BringsRolesAndSegmentsToABlankLab) {
  const Lab lab = sample("skerry-ferries");
  const Lab blank = blank_lab(std::string(32, 'c'));
  const auto placed = place_part(blank, part_of(lab, {machine(lab, "beacon").id}), 1, {});
  ASSERT_TRUE(placed);
  Lab now = blank;
  ASSERT_TRUE(apply(now, placed->edit));
  EXPECT_EQ(now.roles.size(), 1U);
  EXPECT_EQ(now.segments.size(), 2U);
  EXPECT_EQ(placed->changed.size(), 2U) << "each segment that came along is said";
  EXPECT_FALSE(place_part(blank, Lab{}, 1, {}));
}

} // namespace
} // namespace snug::test
