#include "core/report/reach_step.h"

#include "tests/support/rule_world.h"
#include "tests/support/sample.h"

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

// Addresses that stand for the outside are the program's own (RFC 5737): nobody has typed or seen them.
TEST(ReachSteps, TheOutsideIsNamedNotNumbered) {
  const Lab lab = sample("skerry-ferries");
  const Analysis a(lab);
  ReachQuestion q;
  q.from = machine(lab, "wheelhouse").id;
  q.to = {Kind::outside, 0};
  const ReachAnswer answer = a.reach({}).ask(q);
  EXPECT_EQ(answer.verdict, Reached::reaches);
  bool translated = false;
  for (const ReachStep& s : answer.steps) {
    const Message m = step_message(a, s);
    translated |= m.id() == "step-translates-own";
    for (const char* documentation : {"192.0.2.", "198.51.100.", "203.0.113.", "2001:db8:"})
      EXPECT_EQ(english(m).find(documentation), std::string::npos) << english(m);
  }
  EXPECT_TRUE(translated);
}

} // namespace
} // namespace snug::test
