#include "core/base/quote.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

// RFC 3629 section 3 and 10: shortest forms only, no surrogates, at most U+10FFFF.
TEST(Quote, ReadsCodePoints) {
  struct Row {
    const char* text;
    char32_t value;
    std::size_t length;
  };
  const Row rows[] = {{"a", 'a', 1},
                      {"\xc2\x80", 0x80, 2},
                      {"\xdf\xbf", 0x7ff, 2},
                      {"\xe0\xa0\x80", 0x800, 3},
                      {"\xef\xbf\xbf", 0xffff, 3},
                      {"\xf0\x90\x80\x80", 0x10000, 4},
                      {"\xf4\x8f\xbf\xbf", 0x10ffff, 4}};
  for (const Row& row : rows) {
    const CodePoint c = code_point_at(row.text, 0);
    EXPECT_TRUE(c.valid);
    EXPECT_EQ(c.value, row.value);
    EXPECT_EQ(c.length, row.length);
  }
  for (const char* text : {"\x80", "\xc0\x80", "\xc1\xbf", "\xe0\x9f\xbf", "\xed\xa0\x80", "\xf0\x8f\xbf\xbf",
                           "\xf4\x90\x80\x80", "\xf5\x80\x80\x80", "\xc3", "\xe2\x82", "\xe2(\xa1", "\xff"}) {
    EXPECT_FALSE(code_point_at(text, 0).valid) << text;
    EXPECT_EQ(code_point_at(text, 0).length, 1U);
  }
}

TEST(Quote, ShowsCharacters) {
  EXPECT_EQ(quoted_character("a!b", 1), "!");
  EXPECT_EQ(quoted_character("\u0430", 0), "\u0430 (U+0430)");
  EXPECT_EQ(quoted_character("\U0001f6a2", 0), "\U0001f6a2 (U+1F6A2)");
  EXPECT_EQ(quoted_character("a b", 1), "U+0020");
  EXPECT_EQ(quoted_character("a\nb", 1), "U+000A");
  EXPECT_EQ(quoted_character("\xff", 0), "byte FF");
  // Bidi controls (UAX 9) and other characters that cannot be seen.
  for (const char* text : {"\u061c", "\u200b", "\u200e", "\u200f", "\u202a", "\u202e", "\u2066", "\u2069",
                           "\u00a0", "\u00ad", "\ufeff", "\u3000"})
    EXPECT_TRUE(quoted_character(text, 0).starts_with("U+")) << quoted_character(text, 0);
}

TEST(Quote, CutsAtACharacter) {
  EXPECT_EQ(excerpt("short"), "short");
  EXPECT_EQ(excerpt(std::string(64, 'x')), std::string(64, 'x'));
  EXPECT_EQ(excerpt(std::string(65, 'x')), std::string(64, 'x') + "…");
  EXPECT_EQ(excerpt(std::string(63, 'x') + "\u00e9y"), std::string(63, 'x') + "…");
  EXPECT_EQ(excerpt(std::string(100, '\x80')), "…");
}

TEST(Quote, Trims) {
  EXPECT_EQ(trimmed(" \t a b\u00a0\n"), "a b");
  EXPECT_EQ(trimmed("\u202f"), "");
  EXPECT_EQ(trimmed(""), "");
  EXPECT_EQ(trimmed("\u00e9"), "\u00e9");
}

} // namespace
} // namespace snug
