#pragma once
// The floor: one pass over the columns a full analysis must at least look at. Own target with pinned flags
// (-O2, no -march), so that the ratio means the same on every build (PERFORMANCE).

#include <cstdint>
#include <vector>

namespace snug::bench {

struct Columns {
  std::vector<std::int64_t> memory, disk;
  std::vector<std::int32_t> processors;
  std::vector<std::uint32_t> carrier, segment, owner, address4;
  std::vector<std::uint64_t> address6_high, address6_low, mac, name_hash;
};

std::uint64_t linear_pass(const Columns&);
// Floor of conflicts: one pass over packed ranges.
std::uint64_t linear_pass(const std::vector<std::uint64_t>& ranges);

} // namespace snug::bench
