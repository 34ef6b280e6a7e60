#include "core/edit/history.h"

#include "core/edit/build.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Random;

Edit title(const Lab& lab, const std::string& text) {
  return set_field(lab, AnyId{Kind::lab, 0}, "title", text);
}

TEST(History, UndoAllGivesTheFirstLabRedoAllTheLast) {
  for (int seed = 0; seed < test::scaled(500); ++seed) {
    Random r(static_cast<std::uint64_t>(seed));
    Lab lab = test::random_lab(r, 3);
    const Lab first = lab;
    History history;
    for (int i = 0; i < 50; ++i) {
      ASSERT_TRUE(history.perform(lab, test::random_edit(r, lab), r.chance(30)).has_value());
      if (r.chance(20) && history.can_undo()) history.undo(lab);
      if (r.chance(10) && history.can_redo()) history.redo(lab);
    }
    const Lab here = lab;
    const std::size_t n = [&] {
      std::size_t done = 0;
      for (; history.can_undo(); ++done) history.undo(lab);
      return done;
    }();
    ASSERT_TRUE(lab == first) << seed;
    for (std::size_t i = 0; i < n; ++i) history.redo(lab);
    ASSERT_TRUE(lab == here) << seed;
  }
}

TEST(History, SaysWhatBecameOfAnEdit) {
  Lab lab;
  History history;
  const auto type = [&](const char* text) {
    EXPECT_TRUE(history.perform(lab, title(lab, text), true).has_value());
    return history.recorded();
  };
  EXPECT_EQ(type("S"), Recorded::step);
  EXPECT_EQ(type("Sk"), Recorded::joined);
  EXPECT_EQ(type(""), Recorded::dissolved);
  EXPECT_EQ(history.size(), 0U);
  EXPECT_EQ(type("S"), Recorded::step);
  history.seal();
  EXPECT_EQ(type("Sk"), Recorded::step);
}

TEST(History, TypingMergesUntilSealed) {
  Lab lab;
  History history;
  for (const char* text : {"S", "Sk", "Ske"})
    ASSERT_TRUE(history.perform(lab, title(lab, text), true).has_value());
  EXPECT_EQ(history.size(), 1U);
  history.seal();
  ASSERT_TRUE(history.perform(lab, title(lab, "Skerry"), true).has_value());
  EXPECT_EQ(history.size(), 2U);
  history.undo(lab);
  EXPECT_EQ(lab.facts.title, "Ske");
  history.undo(lab);
  EXPECT_EQ(lab.facts.title, "");
}

TEST(History, AnEditThatEndsWhereItBeganDisappears) {
  Lab lab;
  History history;
  ASSERT_TRUE(history.perform(lab, title(lab, "S"), true).has_value());
  ASSERT_TRUE(history.perform(lab, title(lab, ""), true).has_value());
  EXPECT_FALSE(history.can_undo());
  EXPECT_TRUE(history.is_clean());
}

TEST(History, CleanMarkFollowsUndoAndRedo) {
  Lab lab;
  History history;
  ASSERT_TRUE(history.perform(lab, title(lab, "a")).has_value());
  history.mark_clean();
  ASSERT_TRUE(history.perform(lab, title(lab, "b")).has_value());
  EXPECT_FALSE(history.is_clean());
  history.undo(lab);
  EXPECT_TRUE(history.is_clean());
  history.undo(lab);
  EXPECT_FALSE(history.is_clean());
  ASSERT_TRUE(history.perform(lab, title(lab, "c")).has_value());
  EXPECT_FALSE(history.is_clean()) << "the saved state is out of reach now";
}

TEST(History, UndoSelectsWhatItTouchedAndRestoresTheSameId) {
  Lab lab;
  History history;
  EditBuilder b(lab);
  Machine m;
  m.name = "beacon";
  const MachineId id = b.add(m);
  ASSERT_TRUE(history.perform(lab, std::move(b).take({})).has_value());
  const std::array<AnyId, 1> ids{id};
  ASSERT_TRUE(history.perform(lab, remove_elements(lab, ids)).has_value());
  EXPECT_EQ(english(history.undo_step()->label), "Remove beacon");
  EXPECT_EQ(history.undo(lab), std::vector<AnyId>{id});
  ASSERT_EQ(lab.machines.size(), 1U);
  EXPECT_EQ(lab.machines[0].id, id);
}

TEST(History, StateGrowsWithEveryChange) {
  Lab lab;
  History history;
  ASSERT_TRUE(history.perform(lab, title(lab, "a")).has_value());
  const auto state = history.state();
  history.undo(lab);
  EXPECT_GT(history.state(), state);
}

TEST(Transaction, RollsBackUnlessCommitted) {
  Lab lab;
  History history;
  {
    Transaction t(lab, {});
    ASSERT_TRUE(t.perform(title(lab, "a")).has_value());
    ASSERT_TRUE(t.perform(set_field(lab, AnyId{Kind::pc, 0}, "cores", std::int64_t{6})).has_value());
  }
  EXPECT_TRUE(lab == Lab{});
  {
    Transaction t(lab, {});
    ASSERT_TRUE(t.perform(title(lab, "a")).has_value());
    ASSERT_TRUE(t.perform(title(lab, "b")).has_value());
    t.commit(history);
  }
  EXPECT_EQ(lab.facts.title, "b");
  EXPECT_EQ(history.size(), 1U);
  history.undo(lab);
  EXPECT_TRUE(lab == Lab{});
}

} // namespace
} // namespace snug
