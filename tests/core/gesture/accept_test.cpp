#include "core/gesture/accept.h"

#include "core/analyse/analyse.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

TEST(AcceptFinding, CountsNoLongerAndKeepsTheReason) {
  Lab lab = sample("mistakes");
  std::string rule;
  std::vector<AnyId> places;
  {
    const Analysis a = analyse(lab);
    ASSERT_FALSE(a.findings().empty());
    rule = a.findings().front().rule->id;
    places = a.findings().front().places;
  }
  EXPECT_FALSE(accept_finding(lab, rule, places, "  "));
  const auto edit = accept_finding(lab, rule, places, " shown on purpose ");
  ASSERT_TRUE(edit);
  ASSERT_TRUE(apply(lab, *edit));
  const Analysis a = analyse(lab);
  bool found = false;
  for (const Finding& f : a.findings()) {
    if (f.rule->id != rule || f.places != places) continue;
    ASSERT_NE(f.accepted, nullptr);
    EXPECT_EQ(f.accepted->reason, "shown on purpose");
    found = true;
  }
  EXPECT_TRUE(found);
}

} // namespace
} // namespace snug::test
