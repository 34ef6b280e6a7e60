#include "core/addressing/sort_keys.h"

#include "tests/support/random_lab.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <tuple>

namespace snug::test {

// Both sides of the length at which the method changes.
TEST(SortKeys, EqualsStandardSort) {
  Random random(1);
  for (const std::size_t n : {0U, 1U, 2U, 100U, 2047U, 2048U, 5000U}) {
    std::vector<std::uint64_t> keys;
    std::vector<WideKey> wide;
    for (std::uint32_t i = 0; i < n; ++i) {
      keys.push_back((random.next() % 3000 * 977'777 << 32U) | i);
      wide.push_back({random.below(3), random.chance(50) ? random.next() : random.below(100), i});
    }
    auto expected = keys;
    std::sort(expected.begin(), expected.end());
    sort_by_upper_half(keys);
    EXPECT_EQ(keys, expected);
    sort_wide_keys(wide);
    EXPECT_TRUE(std::is_sorted(wide.begin(), wide.end(), [](const WideKey& a, const WideKey& b) {
      return std::tie(a.high, a.low, a.place) < std::tie(b.high, b.low, b.place);
    }));
  }
}

} // namespace snug::test
