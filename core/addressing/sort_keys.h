#pragma once
// A stable radix sort for long lists of keys (short ones go to std::sort), and what need not be sorted.

#include <cstdint>
#include <span>
#include <vector>

namespace snug {

struct WideKey {
  std::uint64_t high = 0;
  std::uint64_t low = 0;
  std::uint32_t place = 0; // rides along; must ascend in the beginning
};
void sort_wide_keys(std::vector<WideKey>& keys);

// The values that may occur more than once, with their places, in order; those that do occur more than once
// are among them. 0 is no value. Linear, in two bits of memory for each value.
std::vector<WideKey> maybe_repeated(std::span<const std::uint64_t> values);

} // namespace snug
