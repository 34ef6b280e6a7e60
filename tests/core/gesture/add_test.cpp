#include "core/gesture/add.h"

#include "core/analyse/analyse.h"
#include "core/document/new_lab.h"
#include "core/roles/catalogue.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace snug::test {
namespace {

Lab after(const Lab& lab, const Result<Added>& added) {
  Lab out = lab;
  EXPECT_TRUE(added) << (added ? "" : english(added.error()));
  if (added) {
    EXPECT_TRUE(apply(out, added->edit));
  }
  return out;
}

std::size_t twice(const Lab& lab) {
  const Analysis a = analyse(lab);
  std::size_t n = 0;
  for (const Finding& f : a.findings())
    for (const std::string_view rule : {"address-twice", "mac-twice", "host-name-twice"})
      n += f.rule->id == rule ? 1 : 0;
  return n;
}

TEST(AddMachine, ComesWithRoleDiskAndPower) {
  const Lab lab = sample("skerry-ferries");
  const ExerciseId exercise = lab.exercises.front().id;
  const auto added = add_machine(lab, *find_role("directory-server"), {}, exercise);
  const Lab now = after(lab, added);
  ASSERT_EQ(now.machines.size(), lab.machines.size() + 1);
  const Machine& m = now.machines.back();
  EXPECT_EQ(AnyId(m.id), added->id);
  EXPECT_EQ(find<Role>(now, m.role)->key, "directory-server");
  EXPECT_EQ(m.memory, find_role("directory-server")->current_usual);
  ASSERT_EQ(now.disks.size(), lab.disks.size() + 1);
  EXPECT_EQ(now.disks.back().machine, m.id);
  EXPECT_EQ(now.disks.back().store, AnyId(now.volumes.front().id));
  const auto& on = find<Exercise>(now, exercise)->on;
  EXPECT_NE(std::find(on.begin(), on.end(), m.id), on.end());
  Lab back = now;
  ASSERT_TRUE(apply(back, inverse(added->edit)));
  EXPECT_EQ(back, lab);
}

TEST(AddMachine, OnARailItHasACardWithAnAddress) {
  const Lab lab = sample("skerry-ferries");
  const SegmentId segment = lab.segments[1].id;
  const Lab now = after(lab, add_machine(lab, *find_role("router"), {}, {}, segment));
  const Card& card = now.cards.back();
  EXPECT_EQ(card.segment, segment);
  ASSERT_FALSE(card.addresses.empty());
  EXPECT_EQ(card.addresses.front().kind, AddressKind::suggested);
  EXPECT_TRUE(card.mac);
  EXPECT_EQ(twice(now), twice(lab));
}

TEST(AddMachine, NamesAreNotTaken) {
  Lab lab = blank_lab("0123456789abcdef0123456789abcdef");
  std::vector<std::string> names;
  for (int i = 0; i < 3; ++i) {
    lab = after(lab, add_machine(lab, *find_role("router"), {}));
    names.push_back(lab.machines.back().name);
  }
  EXPECT_EQ(names, (std::vector<std::string>{"router", "router-2", "router-3"}));
}

TEST(AddSegment, GetsAPrefixThatOverlapsNothing) {
  const Lab lab = sample("skerry-ferries");
  const Added added = add_segment(lab, SegmentKind::isolated);
  Lab now = lab;
  ASSERT_TRUE(apply(now, added.edit));
  ASSERT_TRUE(now.segments.back().prefix4);
  for (const Segment& s : lab.segments)
    if (s.prefix4) {
      EXPECT_FALSE(s.prefix4->overlaps(*now.segments.back().prefix4));
    }
  Lab bridged = lab;
  ASSERT_TRUE(apply(bridged, add_segment(lab, SegmentKind::bridged).edit));
  EXPECT_EQ(bridged.segments.back().lan, lab.lans.front().id);
  EXPECT_FALSE(bridged.segments.back().prefix4);
}

TEST(Duplicate, CopiesGuestsCardsAndDisksAndNothingTwice) {
  const Lab lab = sample("skerry-ferries");
  const MachineId host = machine(lab, "deck-a").id;
  const std::vector<MachineId> one{host};
  const auto added = duplicate(lab, one);
  const Lab now = after(lab, added);
  const MachineId copy{added->id.number};
  EXPECT_EQ(guests_in_order(now, copy).size(), guests_in_order(lab, host).size());
  EXPECT_GT(guests_in_order(now, copy).size(), 0U);
  const auto order = guests_in_order(now, {});
  const auto at = std::find(order.begin(), order.end(), host);
  ASSERT_NE(at, order.end());
  EXPECT_EQ(*(at + 1), copy) << "the copy stands beside the original";
  EXPECT_EQ(twice(now), twice(lab));
}

} // namespace
} // namespace snug::test
