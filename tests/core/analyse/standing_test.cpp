#include "core/analyse/standing.h"

#include "tests/support/rule_case.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Ship;

const ExerciseStanding& of(const std::vector<ExerciseStanding>& all, ExerciseId id) {
  for (const ExerciseStanding& s : all)
    if (s.exercise == id) return s;
  ADD_FAILURE() << "no such exercise";
  return all.front();
}

void accept_all(Lab& lab) {
  for (int round = 0; round < 3; ++round) {
    std::vector<Accepted> accepted;
    const Analysis a = analyse(lab);
    for (const Finding& f : a.findings()) {
      Accepted row;
      row.id.number = lab.facts.next_id++;
      row.rule = f.rule->id;
      row.places = f.places;
      accepted.push_back(std::move(row));
    }
    lab.accepted = std::move(accepted);
  }
}

TEST(Standing, IsGoodWhenEverythingFitsAndNothingIsFound) {
  Ship ship;
  accept_all(ship.lab);
  const Analysis a = analyse(ship.lab);
  const auto all = standings(a);
  ASSERT_EQ(all.size(), a.budgets().size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    EXPECT_EQ(all[i].exercise, a.budgets()[i].exercise);
    EXPECT_EQ(all[i].standing, Standing::good);
    EXPECT_EQ(all[i].word.id(), "standing-fits");
    ASSERT_EQ(all[i].why.size(), 1U);
  }
}

// The same processors are too many whatever is on; a carrier that is off is wrong in one exercise only.
TEST(Standing, AnErrorIsOneWhereItHolds) {
  Ship ship;
  accept_all(ship.lab);
  ship.exercise(ship.quiet).on = {ship.tickets};
  const Analysis a = analyse(ship.lab);
  const auto all = standings(a);
  EXPECT_EQ(of(all, ship.quiet).standing, Standing::error);
  EXPECT_GE(of(all, ship.quiet).errors, 1);
  EXPECT_EQ(of(all, ship.quiet).budgets, Verdict::fits);
  EXPECT_EQ(of(all, ship.quiet).why.front().id(), "standing-errors-why");
  EXPECT_EQ(of(all, ship.all_hands).standing, Standing::good);
  ship.machine(ship.hold).processors = 17;
  const Analysis b = analyse(ship.lab);
  for (const ExerciseStanding& s : standings(b)) EXPECT_EQ(s.standing, Standing::error);
}

TEST(Standing, AnAcceptedErrorDoesNotCount) {
  Ship ship;
  ship.machine(ship.hold).processors = 17;
  accept_all(ship.lab);
  const Analysis a = analyse(ship.lab);
  for (const ExerciseStanding& s : standings(a)) {
    EXPECT_EQ(s.standing, Standing::good);
    EXPECT_EQ(s.errors, 0);
  }
}

TEST(Standing, ACautionIsSaid) {
  Ship ship;
  accept_all(ship.lab);
  ship.machine(ship.beacon).memory = 1500;
  const Analysis a = analyse(ship.lab);
  const auto all = standings(a);
  const ExerciseStanding& s = of(all, ship.all_hands);
  EXPECT_EQ(s.standing, Standing::caution);
  EXPECT_EQ(s.word, say(*s.word.text, Count{s.cautions}));
  EXPECT_EQ(s.why.front().id(), "standing-cautions-why");
}

// More than there is comes before what the checks found, and says where.
TEST(Standing, OverComesFirst) {
  Ship ship;
  ship.machine(ship.hold).memory = 400'000;
  const Analysis a = analyse(ship.lab);
  const auto all = standings(a);
  const ExerciseStanding& s = of(all, ship.all_hands);
  EXPECT_EQ(s.standing, Standing::error);
  EXPECT_EQ(s.word.id(), "standing-over");
  EXPECT_EQ(s.why.front().id(), "standing-over-why");
  EXPECT_EQ(s.where, (std::vector<AnyId>{AnyId{Kind::pc, 0}}));
}

// "over" and "tight" alone speak of memory.
TEST(Standing, WhatElseIsShortIsNamed) {
  Ship ship;
  for (Volume& v : ship.lab.volumes) v.free = 1;
  const Analysis a = analyse(ship.lab);
  const auto all = standings(a);
  const ExerciseStanding& s = of(all, ship.all_hands);
  EXPECT_EQ(s.word.id(), "standing-over-disks");
  EXPECT_EQ(s.why.front().id(), "standing-over-disks-why");
  ASSERT_FALSE(s.where.empty());
  EXPECT_EQ(s.where.front().kind, Kind::volume);
}

// Of the samples: what has an error says so.
TEST(Standing, AgreesWithTheFindings) {
  for (const char* name : {"skerry-ferries", "mistakes", "sixty"}) {
    const Lab lab = test::sample(name);
    const Analysis a = analyse(lab);
    for (const ExerciseStanding& s : standings(a)) {
      EXPECT_EQ(a.has_error(s.exercise), s.errors > 0) << name;
      EXPECT_EQ(s.standing == Standing::error, s.errors > 0 || s.budgets == Verdict::over) << name;
    }
  }
}

} // namespace
} // namespace snug
