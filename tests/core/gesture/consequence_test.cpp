#include "core/gesture/consequence.h"

#include "core/gesture/move.h"
#include "core/layout/content.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace snug::test {
namespace {

TEST(Consequences, SayBothRoomsAndWhatComes) {
  const Lab lab = sample("skerry-ferries");
  Lab then = lab;
  const std::vector<MachineId> one{machine(lab, "tickets-db").id};
  ASSERT_TRUE(apply(then, *move_machines(lab, one, {machine(lab, "deck-b").id, 0, {}})));
  const Analysis now = analyse(lab), after = analyse(then);
  std::vector<std::string> said;
  for (const Message& m : consequences(now, after, {})) said.push_back(english(m));
  ASSERT_GE(said.size(), 2U);
  EXPECT_TRUE(said[0].starts_with("deck-a then has ")) << said[0];
  EXPECT_TRUE(said[1].starts_with("deck-b ")) << said[1];
  EXPECT_TRUE(consequences(now, now, {}).empty());
}

// What is not said one by one is counted.
TEST(Consequences, SayHowManyMoreThereAre) {
  const Lab lab = sample("mistakes");
  Lab none = lab;
  none.cards.clear();
  const Analysis now = analyse(none), after = analyse(lab);
  std::vector<std::string> all, few;
  for (const Message& m : consequences(now, after, {}, 1000)) all.push_back(english(m));
  for (const Message& m : consequences(now, after, {}, 2)) few.push_back(english(m));
  const auto coming = [](const std::vector<std::string>& list) {
    return std::count_if(list.begin(), list.end(),
                         [](const std::string& s) { return s.starts_with("new: "); });
  };
  ASSERT_GT(coming(all), 4);
  EXPECT_EQ(coming(few), 3);
  const std::string rest = "new: " + std::to_string(coming(all) - 2) + " more findings";
  EXPECT_NE(std::find(few.begin(), few.end(), rest), few.end()) << rest;
}

// What a hypervisor then has is what its room on the picture says: the largest guest that still fits.
TEST(Consequences, SayTheRoomAsThePictureDoes) {
  const Lab lab = sample("skerry-ferries");
  Lab then = lab;
  const std::vector<MachineId> one{machine(lab, "tickets-db").id};
  ASSERT_TRUE(apply(then, *move_machines(lab, one, {machine(lab, "deck-b").id, 0, {}})));
  const Analysis now = analyse(lab), after = analyse(then);
  const auto said = consequences(now, after, {});
  ASSERT_GE(said.size(), 2U);
  const layout::Content content = layout::content_of(after, {});
  for (const layout::MachineText& m : content.machines)
    if (m.name == "deck-a") {
      EXPECT_EQ("deck-a then has " + m.room_text, english(said[0]));
    }
}

TEST(Consequences, SayOverAndSettled) {
  const Lab lab = sample("skerry-ferries");
  Lab then = lab;
  ASSERT_TRUE(apply(then, set_memory(then, machine(then, "wheelhouse").id, 40 * 1024)));
  const Analysis now = analyse(lab), after = analyse(then);
  ExerciseId exercise; // with everything on "over" is a note where exercises exist (DECISIONS 18)
  const MachineId wheelhouse = machine(lab, "wheelhouse").id;
  for (const Exercise& e : lab.exercises)
    if (std::find(e.on.begin(), e.on.end(), wheelhouse) != e.on.end()) exercise = e.id;
  ASSERT_TRUE(exercise);
  const auto first = consequences(now, after, exercise, 1);
  ASSERT_FALSE(first.empty());
  EXPECT_TRUE(english(first[0]).find("is then over by") != std::string::npos) << english(first[0]);
  const auto back = consequences(after, now, exercise);
  EXPECT_TRUE(std::any_of(back.begin(), back.end(),
                          [](const Message& m) { return english(m).starts_with("no longer: "); }));
}

// A PC that was tight and is over: nothing was won.
TEST(Consequences, WhatBecomesGraverDoesNotGo) {
  Lab lab = sample("skerry-ferries");
  lab.pc.installed = 256 * 1024;
  lab.pc.reserved = 8 * 1024;
  lab.pc.keep_free = 2 * 1024;
  const auto with_headroom = [&lab](std::int64_t mib) {
    Lab out = lab;
    out.pc.installed -= Analysis(lab).budgets(ExerciseId{}).memory.front().headroom() - mib;
    return out;
  };
  const Lab tight = with_headroom(500), over = with_headroom(-500), fits = with_headroom(64 * 1024);
  const auto lines = [](const Lab& now, const Lab& then) {
    std::string out;
    for (const Message& m : consequences(Analysis(now), Analysis(then), {}, 50)) out += english(m) + "\n";
    return out;
  };
  EXPECT_EQ(lines(tight, over).find("no longer: study PC has"), std::string::npos) << lines(tight, over);
  EXPECT_NE(lines(tight, over).find("study PC is then over by 500 MiB"), std::string::npos)
      << lines(tight, over);
  EXPECT_NE(lines(tight, fits).find("no longer: study PC has"), std::string::npos) << lines(tight, fits);
}

} // namespace
} // namespace snug::test
