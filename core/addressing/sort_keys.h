#pragma once
// Radix sorts for long lists of keys; short ones go to std::sort. All are stable.

#include <cstdint>
#include <vector>

namespace snug {

// Sorts by the upper 32 bits; the lower half rides along (a place in another list) and must ascend in the
// beginning: it breaks ties.
void sort_by_upper_half(std::vector<std::uint64_t>& keys);

struct WideKey {
  std::uint64_t high = 0;
  std::uint64_t low = 0;
  std::uint32_t place = 0; // rides along; must ascend in the beginning
};
void sort_wide_keys(std::vector<WideKey>& keys);

} // namespace snug
