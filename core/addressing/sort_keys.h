#pragma once
// A stable sort for lists of keys, long ones by radix, and what need not be sorted.

#include <cstdint>
#include <span>
#include <vector>

namespace snug {

struct WideKey {
  std::uint64_t high = 0;
  std::uint64_t low = 0;
  std::uint32_t place = 0; // rides along
  std::uint32_t group = 0; // rides along
  bool is_same(const WideKey& o) const { return high == o.high && low == o.low; }
  bool is_before(const WideKey& o) const { return high < o.high || (high == o.high && low < o.low); }
};
// By high, then low; equal ones keep their order. `scratch` holds anything before and after.
void sort_wide_keys(std::span<WideKey> keys, std::vector<WideKey>& scratch);
void sort_wide_keys(std::vector<WideKey>& keys);
// By group, then high, then low; equal ones keep their order. Groups are numbered below `groups`. Gives the
// start of each group and the end.
std::vector<std::uint32_t> sort_by_group(std::vector<WideKey>& keys, std::uint32_t groups);

// The values that may occur more than once, with their places, in order; those that do occur more than once
// are among them. 0 is no value. Linear, in two bits of memory for each value.
std::vector<WideKey> maybe_repeated(std::span<const std::uint64_t> values);

} // namespace snug
