#include "core/model/groups.h"

#include <algorithm>

namespace snug {

Groups::Groups(std::span<const std::uint32_t> group_of, std::uint32_t groups)
    : start_(groups + std::size_t{3}), items_(group_of.size()) {
  // One place ahead: filling moves each start to where it belongs.
  const std::span<std::uint32_t> next = start_, to = items_;
  for (const std::uint32_t g : group_of) ++next[std::min(g, groups) + std::size_t{2}];
  for (std::size_t g = 2; g < next.size(); ++g) next[g] += next[g - 1];
  std::uint32_t item = 0;
  for (const std::uint32_t g : group_of) to[next[std::min(g, groups) + std::size_t{1}]++] = item++;
  start_.pop_back();
}

} // namespace snug
