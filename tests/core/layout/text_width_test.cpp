#include "core/layout/text_width.h"

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace snug {
namespace {

constexpr int kEm = kFontUnitsPerEm; // a size at which 1/64 px and font units are the same

int units(std::string_view text, Weight weight = Weight::regular) { return text_width(text, kEm, weight); }

TEST(TextWidth, WhatTheFontLacks) {
  EXPECT_EQ(units("甲"), kEm);
  EXPECT_EQ(units("甲板", Weight::semibold), 2 * kEm);
  EXPECT_EQ(units("🛳"), kEm);
  EXPECT_EQ(units("✕"), kEm);
  EXPECT_EQ(units("ש"), kEm * 6 / 10);
  EXPECT_EQ(units("ա"), kEm * 6 / 10);
  EXPECT_EQ(units("\xff"), units("\ufffd"));
}

TEST(TextWidth, MarksHaveNoWidth) {
  EXPECT_EQ(units("e\u0301"), units("e"));
  EXPECT_EQ(units("\u200b\u200d\u00ad\ufe0f\u20dd"), 0);
  EXPECT_EQ(units(""), 0);
}

TEST(TextWidth, DigitsAndWeights) {
  EXPECT_LT(units("i"), units("n"));
  EXPECT_LT(units("n"), units("W"));
  EXPECT_LT(units("desk-1", Weight::regular), units("desk-1", Weight::semibold));
  EXPECT_EQ(units("a b"), units("a") + units(" ") + units("b"));
}

TEST(TextWidth, RoundsUpAndSaturates) {
  EXPECT_EQ(text_width("甲", 16 * kPixel, Weight::regular), 16 * kPixel);
  EXPECT_EQ(text_width("i", 1, Weight::regular), 1);
  EXPECT_EQ(text_width("i", 0, Weight::regular), 0);
  const std::string much(100000, 'W');
  EXPECT_EQ(text_width(much, std::numeric_limits<int>::max(), Weight::regular),
            std::numeric_limits<int>::max());
}

} // namespace
} // namespace snug
