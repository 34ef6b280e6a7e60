#include "core/layout/metrics.h"

#include <gtest/gtest.h>

namespace snug::layout {
namespace {

TEST(Metrics, ShortTextStays) { EXPECT_EQ(fitted("beacon", 12, Weight::regular, 200), "beacon"); }

TEST(Metrics, LongTextEndsWithAnEllipsisAndFits) {
  const std::string longest(300, 'w');
  for (int most = 20; most < 300; most += 7) {
    const std::string text = fitted(longest, 12, Weight::semibold, most);
    EXPECT_TRUE(text.ends_with("…"));
    EXPECT_LE(width_of(text, 12, Weight::semibold), most);
    EXPECT_GT(width_of("w" + text, 12, Weight::semibold), most) << "no room is wasted";
  }
}

TEST(Metrics, CutsBetweenCharacters) {
  const std::string text = fitted("ééééééééééééééééé", 12, Weight::regular, 50);
  EXPECT_EQ((text.size() - 3) % 2, 0U) << text;
}

TEST(Metrics, RowsGrowInFewSteps) {
  EXPECT_EQ(row_width(0, 100, 10), 100);
  EXPECT_EQ(row_width(10, 100, 10), 100);
  EXPECT_EQ(row_width(11, 100, 10), 200);
  EXPECT_EQ(row_width(40, 100, 10), 200);
  EXPECT_EQ(row_width(41, 100, 10), 400);
}

TEST(Metrics, Stepped) {
  EXPECT_EQ(stepped(0, 24), 0);
  EXPECT_EQ(stepped(1, 24), 24);
  EXPECT_EQ(stepped(24, 24), 24);
}

} // namespace
} // namespace snug::layout
