#include "core/addressing/conflicts.h"

#include "tests/support/random_lab.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>
#include <set>
#include <tuple>

namespace snug::test {

namespace {

// (group, number, place) of all addresses, in order.
using Sorted = std::set<std::tuple<std::uint32_t, Bits128, std::uint32_t>>;

Sorted sorted(const std::vector<WideKey>& keys) {
  Sorted out;
  for (const WideKey& k : keys) out.insert({k.group, {k.high, k.low}, k.place});
  return out;
}

Bits128 number(Random& random) {
  return {random.chance(50) ? 0 : random.below(3), random.chance(5) ? random.next() : random.below(40)};
}

} // namespace

// Oracle: a set of all, and every pair.
TEST(Conflicts, AreAllPairs) {
  Random random(7);
  for (int i = 0, n = scaled(2'000); i < n; ++i) {
    const auto groups = static_cast<std::uint32_t>(1 + random.below(5));
    std::vector<WideKey> keys;
    for (std::uint32_t k = 0, count = static_cast<std::uint32_t>(random.below(60)); k < count; ++k) {
      const Bits128 at = number(random);
      keys.push_back({at.high, at.low, k, static_cast<std::uint32_t>(random.below(groups))});
    }
    std::vector<PackedRange> ranges;
    for (std::size_t r = random.below(4); r > 0; --r) {
      const Bits128 a = number(random), b = number(random);
      ranges.push_back({static_cast<std::uint32_t>(random.below(groups)), std::min(a, b), std::max(a, b)});
    }
    const Sorted expected = sorted(keys);
    const Conflicts found = find_conflicts(keys, groups, ranges);
    ASSERT_EQ(keys.size(), expected.size());
    std::size_t at = 0;
    for (const auto& [group, value, place] : expected) {
      EXPECT_EQ(keys[at].place, place);
      EXPECT_GE(at, found.start[group]);
      EXPECT_LT(at++, found.start[group + 1]);
    }
    std::size_t equal = 0, equal_expected = 0, inside_expected = 0;
    for (const Conflicts::Run& r : found.equal) {
      for (std::uint32_t k = r.first + 1; k < r.first + r.count; ++k) {
        EXPECT_TRUE(keys[k].is_same(keys[r.first]) && keys[k].group == keys[r.first].group);
        ++equal;
      }
    }
    for (std::size_t k = 1; k < keys.size(); ++k)
      equal_expected += keys[k].is_same(keys[k - 1]) && keys[k].group == keys[k - 1].group ? 1 : 0;
    EXPECT_EQ(equal, equal_expected);
    const auto is_inside = [](const WideKey& k, const PackedRange& r) {
      const Bits128 value{k.high, k.low};
      return k.group == r.group && r.first <= value && value <= r.last;
    };
    for (const PackedRange& r : ranges)
      for (const WideKey& k : keys) inside_expected += is_inside(k, r) ? 1 : 0;
    EXPECT_EQ(found.inside.size(), inside_expected);
    for (const Conflicts::Inside& p : found.inside) EXPECT_TRUE(is_inside(keys[p.address], ranges[p.range]));
  }
}

} // namespace snug::test
