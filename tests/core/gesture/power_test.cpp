#include "core/gesture/power.h"

#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct Power {
  Lab lab = sample("skerry-ferries");
  ExerciseId logins = exercise(lab, "Names and logins"), moving = exercise(lab, "Move a running guest");
  MachineId id(const char* name) const { return machine(lab, name).id; }
  std::string words(ExerciseId e, const char* name) const {
    const auto s = switch_over(lab, e, id(name));
    if (!s) return english(s.error().message);
    std::string out;
    for (const Message& m : says(lab, e, id(name), *s)) out += english(m) + "|";
    return out + english(said(lab, e, id(name), *s));
  }
};

TEST(SwitchOver, TakesCarriersAndGuestsAlong) {
  const Power p;
  EXPECT_FALSE(is_on(p.lab, p.logins, p.id("tickets-1")));
  auto on = switch_over(p.lab, p.logins, p.id("tickets-1"));
  ASSERT_TRUE(on);
  EXPECT_TRUE(on->on);
  EXPECT_EQ(on->along, std::vector<MachineId>{p.id("deck-a")});
  Lab after = p.lab;
  ASSERT_TRUE(apply(after, on->edit));
  EXPECT_TRUE(is_on(after, p.logins, p.id("tickets-1")));
  EXPECT_TRUE(is_on(after, p.logins, p.id("deck-a")));
  EXPECT_FALSE(is_on(after, p.logins, p.id("deck-b")));
  const auto off = switch_over(after, p.logins, p.id("deck-a"));
  ASSERT_TRUE(off);
  EXPECT_FALSE(off->on);
  EXPECT_EQ(off->along, std::vector<MachineId>{p.id("tickets-1")});
  ASSERT_TRUE(apply(after, off->edit));
  EXPECT_FALSE(is_on(after, p.logins, p.id("tickets-1")));
  ASSERT_TRUE(apply(after, inverse(off->edit)));
  ASSERT_TRUE(apply(after, inverse(on->edit)));
  EXPECT_EQ(after, p.lab);
}

TEST(SwitchOver, SaysWhoGoesAlongAndWhy) {
  const Power p;
  EXPECT_EQ(p.words(p.moving, "beacon"), "goes off in Move a running guest|");
  EXPECT_EQ(p.words(p.logins, "tickets-1"),
            "goes on in Names and logins|with it deck-a: tickets-1 runs inside|"
            "deck-a went on as well in Names and logins, because tickets-1 runs inside.");
  EXPECT_EQ(
      p.words(p.moving, "deck-a"),
      "goes off in Move a running guest|with it tickets-1 and tickets-db: inside deck-a|"
      "tickets-1 and tickets-db went off as well in Move a running guest: inside deck-a, which is off now.");
}

TEST(SwitchOver, NamesAnExerciseWhereNoneIsShown) {
  Power p;
  EXPECT_TRUE(is_on(p.lab, {}, p.id("beacon")));
  EXPECT_EQ(p.words({}, "beacon"),
            "everything is on here: choose an exercise first, such as Names and logins, "
            "then switch in it");
  p.lab.exercises.clear();
  EXPECT_EQ(p.words({}, "beacon"),
            "everything is on, as the plan has no exercise: add one, then switch in it");
}

} // namespace
} // namespace snug::test
