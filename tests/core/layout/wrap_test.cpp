#include "core/layout/text_width.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>

namespace snug {
namespace {

constexpr int kEm = kFontUnitsPerEm; // a size at which 1/64 px and font units are the same
using Lines = std::vector<std::string_view>;

int units(std::string_view text, Weight weight = Weight::regular) { return text_width(text, kEm, weight); }

TEST(Wrap, BreaksAtSpacesFirst) {
  const int width = units("nested hypervisor");
  EXPECT_EQ(wrap("nested hypervisor one-two", width, kEm, Weight::regular),
            (Lines{"nested hypervisor", "one-two"}));
  EXPECT_EQ(wrap("  a   b  ", width, kEm, Weight::regular), (Lines{"a   b"}));
  EXPECT_EQ(wrap("a\nb", width, kEm, Weight::regular), (Lines{"a", "b"}));
  EXPECT_EQ(wrap("a\n\nb", width, kEm, Weight::regular), (Lines{"a", "", "b"}));
  EXPECT_EQ(wrap("", width, kEm, Weight::regular), (Lines{""}));
}

TEST(Wrap, ThenAfterHyphensThenAnywhere) {
  const int width = units("storage-");
  EXPECT_EQ(wrap("a storage-path-b", width, kEm, Weight::regular), (Lines{"a", "storage-", "path-b"}));
  EXPECT_EQ(wrap("storage‐path", width, kEm, Weight::regular).size(), 2U);
  EXPECT_EQ(wrap("甲甲甲甲甲", 2 * kEm, kEm, Weight::regular), (Lines{"甲甲", "甲甲", "甲"}));
  EXPECT_EQ(wrap("e\u0301e\u0301", 1, kEm, Weight::regular), (Lines{"e\u0301", "e\u0301"}));
  EXPECT_EQ(wrap("ab", 0, kEm, Weight::regular), (Lines{"a", "b"}));
}

RC_GTEST_PROP(Wrap, LosesNothingAndStaysInside, ()) {
  const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string("aWi- \n-  k")));
  const int width = *rc::gen::inRange(kEm, 12 * kEm);
  std::string joined;
  for (const std::string_view line : wrap(text, width, kEm, Weight::semibold)) {
    // A character that is wider than the line has one of its own.
    const bool inside = line.size() == 1 || units(line, Weight::semibold) <= width;
    RC_ASSERT(inside);
    const bool bare = line.empty() || (line.front() != ' ' && line.back() != ' ');
    RC_ASSERT(bare);
    joined += line;
  }
  const auto solid = [](std::string s) {
    std::erase_if(s, [](char c) { return c == ' ' || c == '\n'; });
    return s;
  };
  RC_ASSERT(solid(joined) == solid(text));
}

} // namespace
} // namespace snug
