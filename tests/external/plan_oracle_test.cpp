// Planned prefixes and addresses against Python's ipaddress.

#include "core/addressing/plan.h"
#include "core/addressing/prefix_plan.h"
#include "tests/support/process.h"
#include "tests/support/random_lab.h"
#include "tests/support/rule_world.h"
#include "tests/support/scale.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug::test {

namespace {

World random_need(Random& random) {
  World w;
  w.lab.numbering.block = prefix("10.96.0.0/12");
  for (std::size_t s = 1 + random.below(8); s > 0; --s) {
    const SegmentId id = w.add_segment("segment", "");
    if (random.chance(30)) w.segment(id).type = SegmentKind::nat;
    for (std::size_t c = random.below(random.chance(10) ? 300 : 40); c > 0; --c)
      w.add_card(w.add_machine("host"), id);
  }
  return w;
}

// Appends what the plan made; false when it was refused.
bool describe(const Lab& before, bool by_need, std::string& out) {
  PlanOptions options;
  options.by_need = by_need;
  options.ranges = false;
  const auto edit = suggest_addresses(before, options);
  if (!edit) return false;
  Lab after = before;
  EXPECT_TRUE(apply(after, *edit));
  const std::vector<std::int64_t> need = hosts_needed(before);
  out += "block " + to_text(*after.numbering.block) + "\n";
  for (std::size_t s = 0; s < after.segments.size(); ++s)
    if (by_need && !before.segments[s].prefix4 && after.segments[s].prefix4)
      out += "net " + to_text(*after.segments[s].prefix4) + " " + std::to_string(need[s]) + "\n";
  for (std::size_t c = 0; c < after.cards.size(); ++c) {
    const Segment* s = find<Segment>(after, after.cards[c].segment);
    if (before.cards[c].addresses.empty() && !after.cards[c].addresses.empty())
      out += "host " + to_text(*after.cards[c].addresses[0].address) + " " + to_text(*s->prefix4) + "\n";
  }
  return true;
}

} // namespace

TEST(PlanOracle, PythonFindsNoMistake) {
  Random random(21);
  std::string text;
  int plans = 0;
  for (int i = 0, n = scaled(400); i < n; ++i) {
    const World w = random_need(random);
    plans += describe(w.lab, true, text) ? 1 : 0;
  }
  EXPECT_GT(plans, 0);
  EXPECT_NE(text.find("host "), std::string::npos);
  const Ran ran = run_program({"/usr/bin/python3", SNUG_SOURCE_DIR "/tests/external/plan_oracle.py"}, text);
  EXPECT_EQ(ran.code, 0) << ran.err;
  EXPECT_EQ(ran.out, "");
}

// The judge itself can fail.
TEST(PlanOracle, PythonFindsMistakes) {
  const Ran ran = run_program({"/usr/bin/python3", SNUG_SOURCE_DIR "/tests/external/plan_oracle.py"},
                              "block 10.0.0.0/24\nnet 10.0.0.0/29 6\nnet 10.0.0.0/30 2\nnet 10.0.1.0/30 2\n"
                              "host 10.0.0.7 10.0.0.0/29\n");
  EXPECT_EQ(ran.code, 0) << ran.err;
  EXPECT_EQ(std::count(ran.out.begin(), ran.out.end(), '\n'), 3) << ran.out;
}

} // namespace snug::test
