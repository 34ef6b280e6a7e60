#include "core/report/escape.h"

#include "tests/support/hostile.h"

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace snug {
namespace {

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
