#pragma once
// Whatever a person can do to a plan, at random: fields of every table, elements that come and go, gestures,
// rows of lists, addresses of the table, repairs of findings.

#include "core/base/result.h"
#include "tests/support/random_lab.h"

#include <span>
#include <string_view>

namespace snug::test {

struct AnyWork {
  std::string_view name;
  // Refused, or an edit without steps, where the lab has nothing for it.
  Result<Edit> (*act)(Random&, const Lab&);
  bool any_value = false; // the edit may be refused: a disk would be its own base
};
std::span<const AnyWork> all_work();

} // namespace snug::test
