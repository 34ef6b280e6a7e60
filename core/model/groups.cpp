#include "core/model/groups.h"

#include <algorithm>

namespace snug {

Groups::Groups(std::span<const std::uint32_t> group_of, std::uint32_t groups)
    : start_(groups + std::size_t{3}), items_(group_of.size()) {
  if (std::is_sorted(group_of.begin(), group_of.end()))
    take_in_order(group_of);
  else
    sort_by_group(group_of, groups);
}

void Groups::take_in_order(std::span<const std::uint32_t> group_of) {
  start_.pop_back();
  const std::span<std::uint32_t> start = start_, items = items_;
  std::size_t next = 0; // group whose start is not known yet
  for (std::uint32_t i = 0; i < group_of.size(); ++i) {
    for (; next <= group_of[i] && next + 1 < start.size(); ++next) start[next] = i;
    items[i] = i;
  }
  for (; next < start.size(); ++next) start[next] = static_cast<std::uint32_t>(items.size());
}

void Groups::sort_by_group(std::span<const std::uint32_t> group_of, std::uint32_t groups) {
  // One place ahead: filling moves each start to where it belongs.
  const std::span<std::uint32_t> next = start_, to = items_;
  for (const std::uint32_t g : group_of) ++next[std::min(g, groups) + std::size_t{2}];
  for (std::size_t g = 2; g < next.size(); ++g) next[g] += next[g - 1];
  std::uint32_t item = 0;
  for (const std::uint32_t g : group_of) to[next[std::min(g, groups) + std::size_t{1}]++] = item++;
  start_.pop_back();
}

} // namespace snug
