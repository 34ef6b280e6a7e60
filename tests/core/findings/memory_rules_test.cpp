#include "core/budget/memory.h"
#include "tests/support/rule_case.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::RuleCase;
using test::Ship;

constexpr AnyId kPc{Kind::pc, 0};
std::vector<AnyId> pc(const Ship&) { return {kPc}; }
std::vector<AnyId> beacon(const Ship& s) { return {s.beacon}; }
std::vector<AnyId> deck_a(const Ship& s) { return {s.deck_a}; }

TEST(MemoryRules, EachFiresAloneAndItsFixMendsIt) {
  const RuleCase cases[] = {
      {"memory-over", Severity::error, true, [](Ship& s) { s.lab.pc.installed = 32768; }, pc},
      {"memory-over", Severity::error, true, [](Ship& s) { s.machine(s.tickets).memory = 7000; }, deck_a},
      // taken 38128, budget 39000
      {"memory-tight", Severity::caution, false, [](Ship& s) { s.lab.pc.reserved = 65536 - 39000; }, pc},
      // taken 38128, budget 38000, but deck-b is empty and not expected to be full
      {"memory-expected-fits", Severity::note, false, [](Ship& s) { s.lab.pc.reserved = 65536 - 38000; }, pc},
      {"memory-refused", Severity::error, true, [](Ship& s) { s.machine(s.beacon).memory = 1000; }, beacon},
      {"memory-least", Severity::caution, true, [](Ship& s) { s.machine(s.beacon).memory = 1500; }, beacon},
      {"memory-footprint", Severity::error, true, [](Ship& s) { s.machine(s.deck_a).footprint = 8192; },
       deck_a},
      // 4096 + 12288 + 4096 + 8192 + 8192: the inner guest is not one of that program
      {"memory-limit", Severity::error, true, [](Ship& s) { s.lab.pc.max_guest_memory = 36863; }, pc},
      {"memory-usable", Severity::error, true, [](Ship& s) { s.lab.pc.usable = 65537; }, pc},
      {"memory-reserve", Severity::error, true, [](Ship& s) { s.lab.pc.reserved = 65536; }, pc},
      {"carrier-off", Severity::error, true,
       [](Ship& s) {
         s.exercise(s.quiet).on = {s.hold, s.tickets};
       },
       [](const Ship& s) {
         return std::vector<AnyId>{s.tickets, s.deck_a};
       }},
  };
  for (const RuleCase& c : cases) test::expect_case(c);
}

// Everything on is told beside an exercise that is over as well, as a note (nobody needs all at once).
TEST(MemoryRules, EverythingOnIsToldBesideAnExercise) {
  Ship ship;
  ship.lab.pc.reserved = 65536 - 20000;
  const auto found = [&](std::string_view rule) {
    std::vector<std::pair<Severity, bool>> out;
    const Analysis a = analyse(ship.lab);
    for (const Finding& f : a.findings())
      if (f.rule->id == rule) out.emplace_back(f.severity, holds_in(ship.lab, f, ExerciseId{}));
    return out;
  };
  using Told = std::vector<std::pair<Severity, bool>>;
  EXPECT_EQ(found("memory-over"), (Told{{Severity::error, false}}));
  EXPECT_EQ(found("memory-over-with-all"), (Told{{Severity::note, true}}));
  ship.lab.exercises.clear(); // then everything on is all there is
  EXPECT_EQ(found("memory-over"), (Told{{Severity::error, true}}));
  EXPECT_TRUE(found("memory-over-with-all").empty());
}

TEST(MemoryRules, AtTheLimitIsNotOver) {
  Ship ship;
  ship.lab.pc.max_guest_memory = 36864;
  ship.lab.pc.reserved = 65536 - 38128;
  ship.lab.pc.keep_free = 0;
  const Analysis a = analyse(ship.lab);
  EXPECT_TRUE(test::of_rule(a, "memory-limit").empty());
  EXPECT_TRUE(test::of_rule(a, "memory-over").empty());
  EXPECT_TRUE(test::of_rule(a, "memory-tight").empty());
}

// DECISIONS 18: an error in a named exercise; everything on counts only where no exercise is over.
TEST(MemoryRules, OverIsAnErrorInExercisesAndANoteOtherwise) {
  Ship ship;
  ship.lab.pc.installed = 32768;
  auto over = test::of_rule(analyse(ship.lab), "memory-over");
  ASSERT_EQ(over.size(), 1U);
  EXPECT_FALSE(over[0].when.always);
  EXPECT_FALSE(over[0].when.everything_on);
  EXPECT_TRUE(over[0].when.exercises.test(0));
  EXPECT_FALSE(over[0].when.exercises.test(1));
  EXPECT_TRUE(analyse(ship.lab).has_error(ship.all_hands));
  EXPECT_FALSE(analyse(ship.lab).has_error(ship.quiet));

  ship.exercise(ship.all_hands).on = {ship.hold};
  over = test::of_rule(analyse(ship.lab), "memory-over");
  ASSERT_EQ(over.size(), 1U);
  EXPECT_EQ(over[0].severity, Severity::note);
  EXPECT_TRUE(over[0].when.everything_on);
  EXPECT_FALSE(analyse(ship.lab).has_error(ExerciseId{}));

  ship.lab.exercises.clear();
  over = test::of_rule(analyse(ship.lab), "memory-over");
  ASSERT_EQ(over.size(), 1U);
  EXPECT_EQ(over[0].severity, Severity::error);
  EXPECT_TRUE(analyse(ship.lab).has_error(ExerciseId{}));
}

TEST(MemoryRules, OneFindingListsAllItsExercisesAndTellsTheWorst) {
  Ship ship;
  ship.lab.pc.installed = 32768;
  ship.exercise(ship.quiet).on = {ship.helm, ship.deck_a, ship.deck_b};
  const auto over = test::of_rule(analyse(ship.lab), "memory-over");
  ASSERT_EQ(over.size(), 1U);
  EXPECT_EQ(over[0].when.exercises.count(), 2U);
  // helm 12288+232+24 = 12544, beacon and hold 4096+232+8 = 4336 each, decks 8192+232+32 = 8456 each: 38128;
  // there are 32768 - 6144 = 26624: 11504 too many.
  EXPECT_EQ(english(over[0].message), "study PC is over by 11.2 GiB in \"All hands\": what runs takes 37.2 "
                                      "GiB, and there are 26.0 GiB");
}

TEST(MemoryRules, AHypervisorIsNotEnlargedWhereItsCarrierHasNoRoom) {
  Ship ship;
  ship.machine(ship.tickets).memory = 7000;
  ship.lab.pc.reserved = 65536 - 38128 - 2048 - 900; // deck-a needs 1024 more
  const Analysis a = analyse(ship.lab);
  const auto over = test::of_rule(a, "memory-over");
  ASSERT_EQ(over.size(), 1U);
  const auto fix = a.fix(over[0]);
  ASSERT_TRUE(fix);
  EXPECT_EQ(fix->label.id(), "fix-least-sizes") << "what is inside may be smaller";
  EXPECT_EQ(fix->edit.steps.size(), 1U);
}

TEST(MemoryRules, NothingRunsNothingIsOver) {
  Lab lab;
  lab.pc.installed = 2048; // less than what is kept for its own system
  const Analysis a = analyse(lab);
  for (const Finding& f : a.findings()) EXPECT_NE(f.rule->topic, Topic::memory);
}

TEST(MemoryRules, TheSizeSetOfTheLabChoosesTheMarks) {
  Ship ship;
  ship.machine(ship.beacon).memory = 1500;
  ship.role(ship.directory).lean_least = 1024;
  ship.lab.facts.sizes = SizeSet::lean;
  EXPECT_TRUE(test::of_rule(analyse(ship.lab), "memory-least").empty());
}

TEST(MemoryRules, SwitchingACarrierOnReachesAllTheWayUp) {
  Ship ship;
  const MachineId inner = ship.add_machine("deck-c", ship.hypervisor, 4096, ship.deck_b);
  const MachineId deepest = ship.add_machine("log", ship.application, 1024, inner);
  ship.exercise(ship.quiet).on = {deepest};
  const Analysis a = analyse(ship.lab);
  const auto off = test::of_rule(a, "carrier-off");
  ASSERT_EQ(off.size(), 1U);
  EXPECT_EQ(off[0].places, (std::vector<AnyId>{deepest, inner}));
  const auto fix = a.fix(off[0]);
  ASSERT_TRUE(fix && apply(ship.lab, fix->edit));
  EXPECT_EQ(ship.exercise(ship.quiet).on, (std::vector<MachineId>{deepest, inner, ship.deck_b}));
}

} // namespace
} // namespace snug
