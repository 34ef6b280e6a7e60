// Many repairs at once against one after the other.

#include "core/analyse/analyse.h"
#include "core/findings/still_found.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug {
namespace {

std::vector<const Finding*> all_of(const Analysis& a) {
  std::vector<const Finding*> out;
  for (const Finding& f : a.findings()) out.push_back(&f);
  return out;
}

// Returns how many there are.
std::size_t expect_same(const Lab& lab) {
  const Analysis a(lab);
  const std::vector<const Finding*> findings = all_of(a);
  const auto together = a.fixes(findings);
  EXPECT_EQ(together.size(), findings.size());
  std::size_t n = 0;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const std::vector<Fix> alone = a.fixes(*findings[i]);
    EXPECT_EQ(together[i].size(), alone.size()) << findings[i]->rule->id;
    for (std::size_t k = 0; k < std::min(alone.size(), together[i].size()); ++k, ++n) {
      EXPECT_EQ(together[i][k].label, alone[k].label);
      EXPECT_EQ(together[i][k].edit.steps, alone[k].edit.steps) << findings[i]->rule->id;
    }
  }
  return n;
}

TEST(Fixes, OfManyAreThoseOfEach) {
  for (const char* name : {"mistakes", "skerry-ferries", "skerry-ferries-16", "branch-office"})
    expect_same(test::sample(name));
  EXPECT_GT(expect_same(test::sample("mistakes")), 20U);
}

// So many that threads share the work.
TEST(Fixes, OfManyAreThoseOfEachInALargeLab) {
  test::Random r(7);
  const Lab lab = test::plausible_lab(r, 400, 12);
  const Analysis a(lab);
  ASSERT_GT(a.findings().size() * lab.machines.size(), 40'000U);
  EXPECT_GT(expect_same(lab), 20U);
}

// Looking for one finding alone is looking at everything: after random edits it is there or not for both.
TEST(StillFound, AgreesWithTheWholeAnalysis) {
  int gone = 0, reach = 0;
  for (const char* name : {"mistakes", "skerry-ferries", "first-draft", "old-pc"}) {
    test::Random r(11);
    for (int round = 0, n = test::scaled(60); round < n; ++round) {
      const Lab before = test::sample(name);
      Lab after = before;
      for (int i = 0; i < 15; ++i) ASSERT_TRUE(apply(after, test::random_edit(r, after)));
      const Analysis then(before), now(after);
      for (const Finding& f : then.findings()) {
        if (f.rule->id == "accepted-gone") continue; // looks at what the other rules found
        const auto all = now.findings();
        const bool there = std::any_of(all.begin(), all.end(), [&f](const Finding& g) {
          return g.rule == f.rule && g.places == f.places;
        });
        EXPECT_EQ(is_still_found(after, f), there) << name << " " << f.rule->id;
        gone += there ? 0 : 1;
        reach += f.rule->topic == Topic::reach ? 1 : 0;
      }
    }
  }
  EXPECT_GT(gone, 20);
  EXPECT_GT(reach, 50);
}

TEST(Fixes, OfNothingAreNone) {
  const Lab lab;
  EXPECT_TRUE(Analysis(lab).fixes(std::span<const Finding* const>()).empty());
}

// The copy is the lab again, whether the repair helped, did not help or could not be made.
TEST(RepairTrial, TakesBackWhatItTried) {
  const Lab lab = test::sample("mistakes");
  const Analysis a(lab);
  RepairTrial trial(lab);
  std::vector<bool> first, second;
  for (std::vector<bool>* round : {&first, &second})
    for (const Finding& f : a.findings()) {
      const auto fix = f.rule->fix ? a.fix(f) : std::nullopt;
      if (!fix) continue;
      round->push_back(trial.mends(f, fix->edit));
      Edit stale = fix->edit;
      stale.steps.insert(stale.steps.end(), fix->edit.steps.begin(), fix->edit.steps.end());
      EXPECT_FALSE(trial.mends(f, stale)) << "what is set twice does not fit the second time";
      EXPECT_FALSE(trial.mends(f, Edit{})) << "nothing was changed";
    }
  EXPECT_EQ(first, std::vector<bool>(first.size(), true));
  EXPECT_EQ(first, second);
  EXPECT_GT(first.size(), 20U);
}

} // namespace
} // namespace snug
