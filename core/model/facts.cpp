#include "core/model/facts.h"

#include <algorithm>

namespace snug {

bool only_carries(const Card& c) {
  return !c.carries.empty() && !c.for_management && !c.for_storage && !c.for_migration;
}

bool is_on(const Card& c, SegmentId segment) {
  const auto names_it = [segment](const SegmentTag& t) { return t.segment == segment; };
  return c.segment == segment || std::any_of(c.trunk.begin(), c.trunk.end(), names_it) ||
         std::any_of(c.carries.begin(), c.carries.end(), names_it);
}

} // namespace snug
