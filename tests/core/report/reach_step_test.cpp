#include "core/report/reach_step.h"

#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

#include <set>

namespace snug::test {
namespace {

TEST(ReachSteps, EveryDecisionIsASentenceOfItsOwn) {
  const World w;
  const Analysis a(w.lab);
  std::set<std::string> said;
  for (int d = 0; d <= static_cast<int>(Decision::not_offered); ++d) {
    const ReachStep step{w.pilot, w.pilot_deck, static_cast<Decision>(d), address("172.22.10.77"), false};
    const std::string sentence = english(step_message(a, step));
    EXPECT_NE(sentence.find(w.lab.machines.front().name), std::string::npos) << sentence;
    EXPECT_EQ(sentence.find('{'), std::string::npos) << sentence;
    EXPECT_TRUE(said.insert(sentence).second) << sentence;
  }
}

} // namespace
} // namespace snug::test
