#include "tests/support/rule_case.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug::test {

namespace {

bool has(const Analysis& a, const Finding& f) {
  const auto all = a.findings();
  return std::any_of(all.begin(), all.end(),
                     [&](const Finding& g) { return g.rule == f.rule && g.places == f.places; });
}

void expect_fix(const Analysis& before, const Finding& finding, Lab lab) {
  const std::optional<Fix> fix = before.fix(finding);
  ASSERT_TRUE(fix.has_value()) << "no fix";
  EXPECT_FALSE(english(fix->label).empty());
  const auto applied = apply(lab, fix->edit);
  ASSERT_TRUE(applied.has_value()) << english(applied.error());
  EXPECT_TRUE(*applied);
  const Analysis after = analyse(lab);
  EXPECT_FALSE(has(after, finding)) << "still there after: " << english(fix->label);
  for (const Finding& f : after.findings())
    EXPECT_TRUE(f.severity != Severity::error || has(before, f)) << "new: " << english(f.message);
}

} // namespace

std::vector<Finding> of_rule(const Analysis& a, std::string_view rule) {
  std::vector<Finding> out;
  for (const Finding& f : a.findings())
    if (f.rule->id == rule) out.push_back(f);
  return out;
}

void expect_case(const RuleCase& c) {
  SCOPED_TRACE(std::string(c.rule));
  ASSERT_NE(find_rule(c.rule), nullptr);
  Ship ship;
  EXPECT_TRUE(of_rule(analyse(ship.lab), c.rule).empty()) << "the sound ship has it";
  c.damage(ship);
  const Analysis analysis = analyse(ship.lab);
  const std::vector<Finding> found = of_rule(analysis, c.rule);
  ASSERT_EQ(found.size(), 1U);
  const Finding& f = found.front();
  EXPECT_EQ(f.severity, c.severity);
  EXPECT_EQ(f.places, c.places(ship));
  EXPECT_GT(english(f.message).size(), 10U);
  EXPECT_EQ(english(f.message).find('{'), std::string::npos) << english(f.message);
  EXPECT_FALSE(english(f.reason).empty());
  EXPECT_EQ(english(f.reason).find('{'), std::string::npos) << english(f.reason);
  if (c.has_fix)
    expect_fix(analysis, f, ship.lab);
  else
    EXPECT_FALSE(analysis.fix(f).has_value());
}

} // namespace snug::test
