#pragma once
// One way in which a lab breaks a rule, and what the rule must say about it.

#include "core/analyse/analyse.h"
#include "tests/support/ship_lab.h"

#include <functional>

namespace snug::test {

struct RuleCase {
  std::string_view rule;
  Severity severity = Severity::error;
  bool has_fix = false;
  std::function<void(Ship&)> damage;
  std::function<std::vector<AnyId>(const Ship&)> places; // of the only finding, in order
};

// Findings of one rule.
std::vector<Finding> of_rule(const Analysis&, std::string_view rule);
// The sound ship has no finding of the rule; the damaged one has exactly this one; its fix, if it has one,
// makes it go and brings no error that was not there.
void expect_case(const RuleCase&);

} // namespace snug::test
