#include "core/findings/still_found.h"

#include "core/findings/rule.h"

#include <algorithm>

namespace snug {

bool is_still_found(const Lab& lab, const Finding& finding) {
  const Index index(lab);
  const AddressesInUse addresses(index);
  ReachByExercise reach(index, addresses);
  std::vector<Finding> left;
  finding.rule->check({lab, index, BudgetList(index, addresses), addresses, &reach, &finding.places}, left);
  return std::any_of(left.begin(), left.end(), [&](const Finding& f) { return f.places == finding.places; });
}

} // namespace snug
