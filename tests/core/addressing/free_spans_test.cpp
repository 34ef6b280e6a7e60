#include "core/addressing/free_spans.h"

#include "core/addressing/room.h"
#include "tests/support/random_lab.h"
#include "tests/support/rule_world.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

TEST(FreeSpans, AreTheRunsThatNobodyHas) {
  World w;
  const SegmentId small = w.add_segment("Small", "192.0.2.0/28");
  w.add_card(w.pilot, small, "192.0.2.3");
  w.segment(small).gateway4 = address("192.0.2.1");
  w.segment(small).kept.push_back(range("192.0.2.6", "192.0.2.9"));
  w.lab.numbering.pc_socket = 0;
  const SegmentId bare = w.add_segment("Bare", "");
  const Index index(w.lab);
  const AddressesInUse in_use(index);
  const auto spans = free_spans(index, in_use, index.place(small), 9);
  const std::vector<AddressRange> expected{{address("192.0.2.2"), address("192.0.2.2")},
                                           {address("192.0.2.4"), address("192.0.2.5")},
                                           {address("192.0.2.10"), address("192.0.2.14")}};
  EXPECT_EQ(spans, expected);
  EXPECT_EQ(free_spans(index, in_use, index.place(small), 2).size(), 2U);
  EXPECT_TRUE(free_spans(index, in_use, index.place(bare), 9).empty());
}

// In any lab they are exactly what Room calls free.
TEST(FreeSpans, HoldWhatRoomCallsFree) {
  Random random(11);
  for (int i = 0, n = scaled(300); i < n; ++i) {
    const Lab lab = random_lab(random, 6);
    const Index index(lab);
    const AddressesInUse in_use(index);
    for (std::uint32_t s = 0; s < lab.segments.size(); ++s) {
      const Room room(index, in_use, s);
      std::int64_t free = 0, listed = 0;
      for (std::int64_t host = 0; host < room.size(); ++host) free += room.is_free(host) ? 1 : 0;
      for (const AddressRange& r : free_spans(index, in_use, s, 1'000'000)) listed += r.size();
      EXPECT_EQ(listed, room.has_prefix() ? free : 0);
    }
  }
}

} // namespace
} // namespace snug::test
