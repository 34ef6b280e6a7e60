#include "core/addressing/sort_keys.h"

#include "tests/support/random_lab.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <map>
#include <tuple>

namespace snug::test {

void expect_sorted(std::vector<WideKey> keys) {
  std::vector<WideKey> expected = keys;
  std::stable_sort(expected.begin(), expected.end(), [](const WideKey& a, const WideKey& b) {
    return std::tie(a.high, a.low) < std::tie(b.high, b.low);
  });
  sort_wide_keys(keys);
  const auto same = [](const WideKey& a, const WideKey& b) { return a.is_same(b) && a.place == b.place; };
  EXPECT_TRUE(std::equal(keys.begin(), keys.end(), expected.begin(), expected.end(), same));
}

// Both sides of the length at which the method changes.
TEST(SortKeys, EqualsStandardSort) {
  Random random(1);
  for (const std::size_t n : {0U, 1U, 2U, 100U, 2047U, 2048U, 5000U}) {
    std::vector<WideKey> wide;
    for (std::uint32_t i = 0; i < n; ++i) {
      wide.push_back({random.below(3), random.chance(50) ? random.next() : random.below(100), i, 0});
    }
    expect_sorted(wide);
    const auto by_number = [](const WideKey& a, const WideKey& b) { return a.is_before(b); };
    std::stable_sort(wide.begin(), wide.end(), by_number);
    std::rotate(wide.begin(), wide.begin() + static_cast<std::ptrdiff_t>(n / 3), wide.end());
    expect_sorted(wide); // two lists in order
  }
}

// Networks as they are (a number of its own each, hosts in the low bits), wider ones, and numbers that differ
// anywhere.
TEST(SortKeys, GroupsEqualStandardSort) {
  Random random(3);
  for (const std::uint64_t hosts : {200ULL, 70'000ULL, 1ULL << 40U, 0ULL})
    for (const std::size_t n : {0U, 1U, 300U, 2048U, 6000U}) {
      constexpr std::uint32_t kGroups = 50; // the last stays empty
      std::vector<WideKey> keys;
      for (std::uint32_t i = 0; i < n; ++i) {
        const auto group = static_cast<std::uint32_t>(random.below(kGroups - 1));
        const std::uint64_t low = hosts == 0 ? random.next() : (group + 7ULL) << 41U | random.below(hosts);
        keys.push_back({hosts == 0 && random.chance(10) ? random.below(3) : 0, low, i, group});
      }
      std::vector<WideKey> expected = keys;
      std::stable_sort(expected.begin(), expected.end(), [](const WideKey& a, const WideKey& b) {
        return std::tie(a.group, a.high, a.low) < std::tie(b.group, b.high, b.low);
      });
      const std::vector<std::uint32_t> start = sort_by_group(keys, kGroups);
      ASSERT_EQ(start.size(), kGroups + 1);
      EXPECT_EQ(start.back(), n);
      const auto same = [](const WideKey& a, const WideKey& b) {
        return a.is_same(b) && a.place == b.place && a.group == b.group;
      };
      EXPECT_TRUE(std::equal(keys.begin(), keys.end(), expected.begin(), expected.end(), same)) << hosts;
      for (std::uint32_t g = 0; g < kGroups; ++g)
        for (std::uint32_t i = start[g]; i < start[g + 1]; ++i) EXPECT_EQ(keys[i].group, g);
    }
}

// Nothing that occurs twice is missed, and what is returned stands where it says.
TEST(SortKeys, FindsWhatIsRepeated) {
  Random random(2);
  for (const std::size_t n : {0U, 1U, 2U, 50U, 3000U, 20'000U}) {
    std::vector<std::uint64_t> values;
    std::map<std::uint64_t, std::vector<std::uint32_t>> places;
    for (std::uint32_t i = 0; i < n; ++i) {
      values.push_back(random.chance(90) ? random.next() : random.below(n));
      if (values.back() != 0) places[values.back()].push_back(i);
    }
    std::map<std::uint64_t, std::vector<std::uint32_t>> found;
    const auto keys = maybe_repeated(values);
    for (const WideKey& k : keys) found[k.low].push_back(k.place);
    for (const auto& [value, where] : places) EXPECT_TRUE(where.size() < 2 || found[value] == where) << value;
    for (const auto& [value, where] : found) EXPECT_EQ(places.at(value), where);
    EXPECT_LE(keys.size(), values.size() / 2 + 8) << "hardly a filter";
  }
}

} // namespace snug::test
