#include "core/base/clean.h"

#include "core/base/quote.h"
#include "tests/support/hostile.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace snug {
namespace {

using test::utf8;

// RELIABILITY row 22: all 65 controls of C0, DEL and C1.
TEST(Clean, TakesOutEveryControl) {
  for (char32_t c = 0; c <= 0x9f; ++c) {
    if (c >= 0x20 && c < 0x7f) continue;
    const std::string text = "a" + (c == 0 ? std::string(1, '\0') : utf8(c)) + "b";
    const bool breaks = (c >= 0x09 && c <= 0x0d) || c == 0x85;
    EXPECT_EQ(clean(text), breaks ? "a b" : "ab") << static_cast<std::uint32_t>(c);
    EXPECT_EQ(clean_lines(text), c == 0x09 ? "a b" : (breaks ? "a\nb" : "ab"))
        << static_cast<std::uint32_t>(c);
  }
}

// RELIABILITY row 22: the noncharacters (Unicode 15, 23.7) and 2,048 surrogates.
TEST(Clean, TakesOutNoncharactersAndSurrogates) {
  std::vector<char32_t> unfit;
  for (char32_t c = 0xfdd0; c <= 0xfdef; ++c) unfit.push_back(c);
  for (char32_t plane = 0; plane <= 0x10; ++plane)
    for (const char32_t last : {char32_t{0xfffe}, char32_t{0xffff}}) unfit.push_back((plane << 16U) | last);
  EXPECT_EQ(unfit.size(), 66U);
  for (char32_t c = 0xd800; c <= 0xdfff; ++c) unfit.push_back(c);
  for (const char32_t c : unfit) EXPECT_EQ(clean("a" + utf8(c) + "b"), "ab") << static_cast<std::uint32_t>(c);
}

// RELIABILITY row 26: the 12 direction controls of UAX 9.
TEST(Clean, TakesOutDirectionControls) {
  const std::vector<char32_t> controls{0x61c,  0x200e, 0x200f, 0x202a, 0x202b, 0x202c,
                                       0x202d, 0x202e, 0x2066, 0x2067, 0x2068, 0x2069};
  for (const char32_t c : controls)
    EXPECT_EQ(clean("a" + utf8(c) + "b"), "ab") << static_cast<std::uint32_t>(c);
}

TEST(Clean, KeepsEverythingElse) {
  const std::string text = "Fähre “Skerry” → 甲板 🛳 e\u0301 \u200d \ue000";
  EXPECT_EQ(clean(text), text);
}

TEST(Clean, JoinsCrLfAndReplacesBrokenBytes) {
  EXPECT_EQ(clean("a\r\nb\rc\nd\u2028e"), "a b c d e");
  EXPECT_EQ(clean_lines("a\r\nb\rc\n\nd"), "a\nb\nc\n\nd");
  EXPECT_EQ(clean("\xff"), "\ufffd");
  EXPECT_EQ(clean("a\xc3"), "a\ufffd");
  EXPECT_EQ(clean("\xc0\xaf"), "\ufffd\ufffd"); // overlong
  EXPECT_EQ(clean(""), "");
}

TEST(Clean, TwiceIsOnceAndValid) {
  std::mt19937 random(20);
  for (int i = 0; i < test::scaled(20000); ++i) {
    const std::string once = clean(test::random_bytes(random, 24) + test::hostile_label(random));
    ASSERT_EQ(clean(once), once);
    for (std::size_t at = 0; at < once.size();) {
      const CodePoint c = code_point_at(once, at);
      ASSERT_TRUE(c.valid);
      at += c.length;
    }
  }
}

} // namespace
} // namespace snug
