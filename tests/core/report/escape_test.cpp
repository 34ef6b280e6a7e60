#include "core/report/escape.h"

#include "core/base/quote.h"
#include "tests/support/hostile.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

#include <limits>
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
    for (const char32_t last : {0xfffe, 0xffff}) unfit.push_back((plane << 16U) | last);
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

TEST(Xml, EscapesTheFive) {
  EXPECT_EQ(xml("<a b=\"c\" d='e'>&amp;\n\x01</a>"),
            "&lt;a b=&quot;c&quot; d=&#39;e&#39;&gt;&amp;amp; &lt;/a&gt;");
  EXPECT_EQ(html("<script>"), "&lt;script&gt;");
}

TEST(Markdown, LeavesPlainNamesAlone) {
  for (const char* plain :
       {"desk-1", "10.2.0.5", "fd00::5/64", "Directory server (lean)", "2.5 GiB", "a, b; c"})
    EXPECT_EQ(markdown_text(plain), plain);
}

// CommonMark 0.30: backslash escapes, block starts; GFM 0.29: autolinks.
TEST(Markdown, TakesTheMeaningFromMarks) {
  EXPECT_EQ(markdown_text("*a* _b_ `c` [d](e)"), "\\*a\\* \\_b\\_ \\`c\\` \\[d\\](e)");
  EXPECT_EQ(markdown_text("<b>&nbsp;"), "&lt;b&gt;&amp;nbsp;");
  EXPECT_EQ(markdown_text("# a"), "\\# a");
  EXPECT_EQ(markdown_text("   - a"), "\\- a");
  EXPECT_EQ(markdown_text("---"), "\\---");
  EXPECT_EQ(markdown_text("==="), "\\===");
  EXPECT_EQ(markdown_text("1. a"), "1\\. a");
  EXPECT_EQ(markdown_text("12)"), "12\\)");
  EXPECT_EQ(markdown_text("1.5"), "1.5");
  EXPECT_EQ(markdown_text("http://x WWW.y"), "http\\://x WWW\\.y");
  EXPECT_EQ(markdown_text("a@b.example"), "a`@`b.example");
  EXPECT_EQ(markdown_text("a @ b@"), "a @ b@");
  EXPECT_EQ(markdown_cell("a|b\\|c\nd"), "a\\|b\\\\\\|c d");
  EXPECT_EQ(markdown_cell(""), "");
}

// RFC 4180 section 2.
TEST(Csv, QuotesWhatNeedsIt) {
  EXPECT_EQ(csv_field("plain"), "plain");
  EXPECT_EQ(csv_field(""), "");
  EXPECT_EQ(csv_field("a,b"), "\"a,b\"");
  EXPECT_EQ(csv_field("say \"x\""), "\"say \"\"x\"\"\"");
  EXPECT_EQ(csv_field("a\r\nb"), "\"a\nb\"");
  EXPECT_EQ(csv_field("a "), "\"a \"");
}

// OWASP "CSV Injection"; RELIABILITY row 20. What a reader of RFC 4180 sees first must be safe.
TEST(Csv, NoPayloadStartsAFormula) {
  std::mt19937 random(4180);
  for (int i = 0; i < 500; ++i) {
    const std::string payload = test::formula_payload(random);
    std::string field = csv_field(payload);
    if (field.starts_with('"')) field = field.substr(1, field.size() - 2);
    ASSERT_TRUE(field.starts_with('\'')) << payload << " gave " << field;
  }
  EXPECT_EQ(csv_field("=1"), "'=1");
  EXPECT_EQ(csv_field("−5"), "'−5");
  EXPECT_EQ(csv_field("a=1"), "a=1");
  EXPECT_EQ(csv_field("–"), "–");
}

TEST(Csv, NumbersStayNumbers) {
  EXPECT_EQ(csv_number(-5), "-5");
  EXPECT_EQ(csv_number(0), "0");
  EXPECT_EQ(csv_number(std::numeric_limits<std::int64_t>::min()), "-9223372036854775808");
}

// POSIX XCU 2.2.2.
TEST(Shell, QuotesInSingleQuotes) {
  EXPECT_EQ(shell_quote(""), "''");
  EXPECT_EQ(shell_quote("a b"), "'a b'");
  EXPECT_EQ(shell_quote("it's"), "'it'\\''s'");
  EXPECT_EQ(shell_quote("$(x)`y`\\\n"), "'$(x)`y`\\\n'");
  EXPECT_EQ(shell_quote(std::string("a\0b", 3)), "'ab'");
  EXPECT_EQ(shell_quote("\xff"), "'\xff'");
}

} // namespace
} // namespace snug
