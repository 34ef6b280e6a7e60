#include "core/gesture/extras.h"

#include "core/analyse/analyse.h"
#include "core/document/new_lab.h"
#include "core/gesture/plug.h"
#include "core/gesture/rails.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace snug::test {
namespace {

Lab after(const Lab& lab, const Added& added) {
  Lab out = lab;
  EXPECT_TRUE(apply(out, added.edit));
  Lab back = out;
  EXPECT_TRUE(apply(back, inverse(added.edit)));
  EXPECT_EQ(back, lab);
  return out;
}

TEST(Extras, AnExerciseBeginsAsAnotherOrWithEverythingOn) {
  const Lab lab = sample("skerry-ferries");
  const Exercise& like = lab.exercises.front();
  const Added same = add_exercise(lab, like.id), all = add_exercise(lab);
  const Lab now = after(lab, same);
  ASSERT_EQ(now.exercises.size(), lab.exercises.size() + 1);
  EXPECT_EQ(AnyId(now.exercises.back().id), same.id);
  EXPECT_EQ(now.exercises.back().on, like.on);
  EXPECT_EQ(after(lab, all).exercises.back().on.size(), lab.machines.size());
}

TEST(Extras, NamesAreNotTaken) {
  Lab lab = blank_lab("0123456789abcdef0123456789abcdef");
  for (Added (*add)(const Lab&) : {add_lan, add_volume, add_place})
    for (int i = 0; i < 2; ++i) lab = after(lab, add(lab));
  EXPECT_EQ(lab.lans[0].name, "LAN 1");
  EXPECT_EQ(lab.lans[1].name, "LAN 2");
  EXPECT_EQ(lab.volumes[1].name, "Volume 2");
  EXPECT_EQ(lab.places[1].name, "Place 2");
  lab.lans[0].name = "LAN 3"; // what a person calls it counts
  EXPECT_NE(after(lab, add_lan(lab)).lans.back().name, "LAN 3");
}

// What was refused for lack of a LAN works with one.
TEST(Extras, ARailCanBeJoinedWithANewLan) {
  Lab lab = blank_lab("0123456789abcdef0123456789abcdef");
  ASSERT_TRUE(apply(lab, add_segment(lab, SegmentKind::isolated).edit));
  EXPECT_FALSE(lead_out(lab, lab.segments[0].id, SegmentKind::bridged, {}));
  const Lab now = after(lab, add_lan(lab));
  EXPECT_TRUE(lead_out(now, now.segments[0].id, SegmentKind::bridged, {}));
}

TEST(Extras, DisksFindRoomOnANewVolume) {
  Lab lab = blank_lab("0123456789abcdef0123456789abcdef");
  lab = after(lab, add_volume(lab));
  const Analysis a = analyse(lab);
  const auto& disks = a.budgets(ExerciseId{}).disks;
  ASSERT_EQ(disks.size(), 1U);
  EXPECT_EQ(disks.front().worst, 0);
  EXPECT_EQ(disks.front().budget, kNewVolume * 9 / 10); // a tenth is kept free
}

} // namespace
} // namespace snug::test
