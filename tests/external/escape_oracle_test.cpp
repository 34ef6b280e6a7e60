// Escaped text through readers that others wrote: libxml2, Python's expat, html.parser and csv, a POSIX
// shell.
#include "core/report/escape.h"

#include "tests/support/hostile.h"
#include "tests/support/process.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

#include <filesystem>

namespace snug {
namespace {

using test::run_program;

std::vector<std::string> read_back(const std::string& reader, const std::string& text) {
  const auto ran =
      run_program({"/usr/bin/python3", SNUG_SOURCE_DIR "/tests/tools/read_back.py", reader}, text);
  EXPECT_EQ(ran.code, 0) << ran.err;
  std::vector<std::string> out;
  for (std::size_t at = 0; at < ran.out.size();) {
    const std::size_t end = ran.out.find('\0', at);
    out.push_back(ran.out.substr(at, end - at));
    at = end + 1;
  }
  return out;
}

std::vector<std::string> labels(unsigned seed, int count) {
  std::mt19937 random(seed);
  std::vector<std::string> out;
  out.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) out.push_back(test::hostile_label(random));
  return out;
}

std::vector<std::string> trimmed_texts(const std::vector<std::string>& texts) {
  std::vector<std::string> out;
  for (const std::string& text : texts) {
    const std::size_t first = std::min(text.find_first_not_of(' '), text.size());
    const std::string trimmed = text.substr(first, text.find_last_not_of(' ') + 1 - first);
    if (!trimmed.empty()) out.push_back(trimmed);
  }
  return out;
}

// The texts of the elements `tag` that cmark-gfm made, without those equal to `filler` and the empty ones.
std::vector<std::string> markdown_texts(const std::string& source, const std::string& tag,
                                        const std::string& filler) {
  const std::vector<std::string> command{"cmark-gfm", "-e", "table", "-e", "strikethrough", "-e", "autolink"};
  const auto ran = run_program(command, source);
  std::vector<std::string> out;
  for (const std::string& text : read_back("cmark-" + tag, ran.out))
    if (text != filler && !text.empty()) out.push_back(text);
  return out;
}

// RELIABILITY row 21: 1,000 hostile labels; text content equals the cleaned input.
TEST(EscapeOracle, XmlIsWellFormedAndReadsBack) {
  std::string document = "<d>";
  std::vector<std::string> expected;
  for (const std::string& label : labels(21, 1000)) {
    document += "<t title=\"" + xml(label) + "\">" + xml(label) + "</t>\n";
    expected.insert(expected.end(), 2, clean(label));
  }
  document += "</d>";
  const auto lint = run_program({"xmllint", "--noout", "--nonet", "-"}, document);
  EXPECT_EQ(lint.code, 0) << lint.err;
  EXPECT_EQ(lint.err, "");
  EXPECT_EQ(read_back("xml", document), expected);
}

TEST(EscapeOracle, HtmlReadsBack) {
  std::string document;
  std::vector<std::string> expected;
  for (const std::string& label : labels(22, 1000)) {
    document += "<p title=\"" + html(label) + "\">" + html(label) + "</p>";
    expected.insert(expected.end(), 2, clean(label));
  }
  EXPECT_EQ(read_back("html", document), expected);
}

// RFC 4180 through Python's csv module; a guarded field reads back with its apostrophe.
TEST(EscapeOracle, CsvReadsBack) {
  std::string document;
  std::vector<std::string> given = labels(23, 1000);
  std::mt19937 random(24);
  for (int i = 0; i < 500; ++i) given.push_back(test::formula_payload(random));
  for (const std::string& label : given) document += csv_field(label) + "," + csv_number(-7) + "\r\n";
  const std::vector<std::string> fields = read_back("csv", document);
  ASSERT_EQ(fields.size(), 2 * given.size());
  for (std::size_t i = 0; i < given.size(); ++i) {
    const std::string& field = fields[2 * i];
    const std::string wanted = clean_lines(given[i]);
    ASSERT_TRUE(field == wanted || field == "'" + wanted) << field;
    ASSERT_EQ(std::string("=+-@\t\r").find(field.empty() ? 'a' : field[0]), std::string::npos) << field;
    ASSERT_EQ(fields[2 * i + 1], "-7");
  }
}

// RELIABILITY row 23: 10,000 random byte strings, every byte but NUL, come through a shell unchanged, and
// nothing runs.
TEST(EscapeOracle, ShellWordsReadBack) {
  std::mt19937 random(25);
  const std::filesystem::path canary = std::filesystem::path(testing::TempDir()) / "snuglab-canary";
  std::filesystem::remove(canary);
  const std::string bait = "';touch " + canary.string() + ";$(touch " + canary.string() + ")'";
  for (int batch = 0; batch < 200; ++batch) {
    std::string script = "printf '%s\\0'";
    std::string expected;
    for (int i = 0; i < 50; ++i) {
      std::string bytes = test::random_bytes(random, 60);
      if (i % 4 == 0) bytes += bait;
      script.append(" ").append(shell_quote(bytes));
      expected.append(bytes).append(1, '\0');
    }
    const auto ran = run_program({"dash", "-c", script});
    ASSERT_EQ(ran.code, 0) << ran.err;
    ASSERT_EQ(ran.out, expected);
  }
  EXPECT_FALSE(std::filesystem::exists(canary));
}

// CommonMark with tables, strikethrough and autolinks, read by cmark-gfm: the text comes back, nothing else
// does.
TEST(EscapeOracle, MarkdownReadsBack) {
  if (run_program({"cmark-gfm", "--version"}).code != 0) GTEST_SKIP() << "cmark-gfm is not installed";
  std::string lines;
  std::string table = "| a | b |\n| --- | --- |\n";
  std::vector<std::string> expected;
  for (const std::string& label : labels(27, 1000)) {
    lines += "x\n\n" + markdown_text(label) + "\n\n";
    table += "| " + markdown_cell(label) + " | z |\n";
    expected.push_back(clean(label));
  }
  EXPECT_EQ(markdown_texts(lines, "p", "x"), trimmed_texts(expected));
  EXPECT_EQ(markdown_texts(table, "td", "z"), trimmed_texts(expected));
}

// RELIABILITY row 28: unique by Unicode's normal form C and full case folding, as Python knows them.
TEST(EscapeOracle, FileNamesHaveNoTwins) {
  std::mt19937 random(26);
  FileNames taken;
  std::string names;
  const auto any = [&](std::uint32_t first, std::uint32_t last) {
    return test::utf8(
        static_cast<char32_t>(std::uniform_int_distribution<std::uint32_t>(first, last)(random)));
  };
  for (char32_t c = 0x20; c <= 0x2fff; ++c) names += taken.next(test::utf8(c) + "x", "") + "\n";
  for (int i = 0; i < test::scaled(10000); ++i) {
    const std::string text = any(0x20, 0x7f) + any(0xa0, 0x52f) + any(0x300, 0x36f) + any(0x1e00, 0x1fff);
    names += taken.next(text, ".md") + "\n";
  }
  EXPECT_EQ(read_back("names", names), std::vector<std::string>{});
}

} // namespace
} // namespace snug
