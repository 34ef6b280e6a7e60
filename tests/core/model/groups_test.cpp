#include "core/model/groups.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace snug {
namespace {

std::vector<std::uint32_t> list(std::span<const std::uint32_t> s) { return {s.begin(), s.end()}; }

TEST(Groups, ItemsKeepTheirOrder) {
  const std::vector<std::uint32_t> group_of{2, 0, 2, 0xffff'ffff, 0, 3};
  const Groups groups(group_of, 3);
  EXPECT_EQ(list(groups.of(0)), (std::vector<std::uint32_t>{1, 4}));
  EXPECT_EQ(list(groups.of(1)), std::vector<std::uint32_t>{});
  EXPECT_EQ(list(groups.of(2)), (std::vector<std::uint32_t>{0, 2}));
  EXPECT_EQ(list(groups.of(3)), (std::vector<std::uint32_t>{3, 5}));
}

TEST(Groups, NoItemsAndNoGroups) {
  EXPECT_TRUE(Groups({}, 0).of(0).empty());
  EXPECT_EQ(list(Groups(std::vector<std::uint32_t>{7, 0}, 0).of(0)), (std::vector<std::uint32_t>{0, 1}));
}

TEST(Groups, EqualLookingAtEachGroup) {
  std::mt19937 random(7);
  for (std::uint32_t n = 0; n < 60; ++n) {
    std::vector<std::uint32_t> group_of(n);
    for (std::uint32_t& g : group_of) g = static_cast<std::uint32_t>(random() % 9);
    if (n % 2 == 1) std::sort(group_of.begin(), group_of.end());
    const Groups groups(group_of, 6);
    for (std::uint32_t g = 0; g <= 6; ++g) {
      std::vector<std::uint32_t> expected;
      for (std::uint32_t i = 0; i < n; ++i)
        if (std::min(group_of[i], 6U) == g) expected.push_back(i);
      EXPECT_EQ(list(groups.of(g)), expected);
    }
  }
}

} // namespace
} // namespace snug
