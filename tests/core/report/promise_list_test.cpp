#include "core/report/promise_list.h"

#include "core/findings/rule.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

const PromiseLine* line_of(const std::vector<PromiseLine>& lines, std::string_view says) {
  for (const PromiseLine& line : lines)
    if (english(line.says) == says) return &line;
  ADD_FAILURE() << "no promise " << says;
  return nullptr;
}

// deck-a has deck-b's address (samples/expected/skerry-ferries.findings).
TEST(PromiseList, BrokenOnesStandFirstWithTheirFinding) {
  const Lab lab = sample("skerry-ferries");
  const Analysis a(lab);
  const auto lines = promise_lines(a, exercise(lab, "Hands on the wheel"));
  ASSERT_EQ(lines.size(), lab.promises.size());
  EXPECT_EQ(lines.front().now, Kept::broken);
  EXPECT_EQ(english(lines.front().says), "wheelhouse reaches deck-b on tcp 443");
  EXPECT_NE(english(lines.front().why).find("172.22.10.31"), std::string::npos) << english(lines.front().why);
  ASSERT_NE(lines.front().finding, nullptr);
  EXPECT_EQ(lines.front().finding->rule->id, "promise-broken");
  ASSERT_TRUE(lines.front().decides);
  EXPECT_EQ(lines.front().decides->from, AnyId(machine(lab, "wheelhouse").id));
  for (std::size_t i = 1; i < lines.size(); ++i) EXPECT_NE(lines[i].now, Kept::broken);
}

TEST(PromiseList, WhatNobodySpeaksOfIsNotJudged) {
  Lab lab = sample("skerry-ferries");
  const ExerciseId first = exercise(lab, "Names and logins");
  const Analysis a(lab);
  const auto lines = promise_lines(a, first); // beacon alone is on
  const PromiseLine* tickets = line_of(lines, "tickets-1 reaches tickets-db on tcp 7450");
  ASSERT_NE(tickets, nullptr);
  EXPECT_EQ(tickets->now, Kept::not_judged);
  EXPECT_EQ(english(tickets->why), "tickets-1 is off.");
  EXPECT_FALSE(tickets->decides);
  lab.promises.front().exercises = {exercise(lab, "A shared hold")};
  const Analysis b(lab);
  EXPECT_EQ(line_of(promise_lines(b, first), "Cargo never reaches the outside")->why.id(),
            "promise-elsewhere");
}

// What is missing is said: a card that is out, machines that are off, a card at all.
TEST(PromiseList, NotJudgedSaysWhatIsMissing) {
  Lab lab = sample("skerry-ferries");
  for (Segment& s : lab.segments) s.pc_socket = false; // the PC is on, and would be there
  const auto why = [&](ExerciseId shown) {
    const Analysis a(lab);
    const auto lines = promise_lines(a, shown);
    const PromiseLine* line = line_of(lines, "Passengers reaches the outside");
    return line ? english(line->why) : std::string("no line");
  };
  const ExerciseId alone = exercise(lab, "A shared hold");
  for (Exercise& e : lab.exercises)
    if (e.id == alone) e.on = {machine(lab, "hold").id};
  const std::string off = why(alone);
  EXPECT_TRUE(off.starts_with("Nobody is on Passengers. Off: ")) << off;
  EXPECT_NE(off.find("tickets-1"), std::string::npos) << off;
  const SegmentId passengers{17};
  ASSERT_EQ(name_of(lab, passengers), "Passengers");
  for (Card& c : lab.cards)
    if (c.segment == passengers) c.connected = false;
  const std::string out = why({});
  EXPECT_TRUE(out.starts_with("Nobody is plugged into Passengers. Not connected: ")) << out;
  std::erase_if(lab.cards, [&](const Card& c) { return c.segment == passengers; });
  EXPECT_EQ(why({}), "No machine has a card on Passengers. Plug one in.");
}

// Never is kept where the way ends; that is no advice to mend it.
TEST(PromiseList, KeptIsolationSaysWhereTheWayEnds) {
  Lab lab = sample("skerry-ferries");
  lab.promises.front().from = machine(lab, "hold").id;
  const Analysis a(lab);
  const auto lines = promise_lines(a, exercise(lab, "A shared hold"));
  const PromiseLine* hold = line_of(lines, "hold never reaches the outside");
  ASSERT_NE(hold, nullptr);
  EXPECT_EQ(hold->now, Kept::kept);
  EXPECT_EQ(hold->why.id(), "end-no-route") << english(hold->why);
}

// All machines on Cargo are on Steering too, and send nothing to the outside by Cargo.
TEST(PromiseList, IsolationIsKeptWhereNothingIsSentThatWay) {
  const Lab lab = sample("skerry-ferries");
  const Analysis a(lab);
  const auto lines = promise_lines(a, {});
  const PromiseLine* cargo = line_of(lines, "Cargo never reaches the outside");
  ASSERT_NE(cargo, nullptr);
  EXPECT_EQ(cargo->now, Kept::kept);
  EXPECT_EQ(cargo->why.id(), "promise-no-way");
  const auto alone = promise_lines(a, exercise(lab, "Names and logins")); // beacon is not on Cargo
  EXPECT_EQ(line_of(alone, "Cargo never reaches the outside")->now, Kept::not_judged);
}

TEST(PromiseList, BrokenIsolationNamesTheLeak) {
  Lab lab = sample("skerry-ferries");
  for (Promise& p : lab.promises)
    if (p.must == PromiseKind::reach) {
      p.must = PromiseKind::never; // Passengers reach the outside through gangway
      p.exercises.clear();
    }
  const Analysis a(lab);
  const auto lines = promise_lines(a, exercise(lab, "The ticket office opens"));
  const PromiseLine* leak = line_of(lines, "Passengers never reaches the outside");
  ASSERT_NE(leak, nullptr);
  EXPECT_EQ(leak->now, Kept::broken);
  EXPECT_NE(english(leak->why).find("gangway"), std::string::npos) << english(leak->why);
  ASSERT_NE(leak->finding, nullptr);
  EXPECT_EQ(leak->finding->rule->id, "isolation-broken");
}

TEST(PromiseList, ExercisesAreNamedByState) {
  Lab lab;
  PromiseLine line;
  line.occasions = {Kept::kept};
  EXPECT_EQ(english(occasions_text(lab, line)), "kept in every exercise");
  for (const char* name : {"One", "Two", "Three"}) {
    lab.exercises.emplace_back().name = name;
    lab.exercises.back().id.number = ++lab.facts.next_id;
  }
  line.occasions = {Kept::kept, Kept::broken, Kept::not_judged, Kept::kept};
  EXPECT_EQ(english(occasions_text(lab, line)),
            "broken in One; kept in everything on and Three; nothing to check in Two");
}

} // namespace
} // namespace snug::test
