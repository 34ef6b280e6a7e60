// The findings of each sample against those worked out by hand (samples/expected).

#include "tests/support/sample.h"

#include <algorithm>
#include <charconv>
#include <fstream>
#include <gtest/gtest.h>
#include <regex>
#include <set>

namespace snug {
namespace {

using test::sample;

// Lines of sorted `a` that sorted `b` lacks.
std::string only_in(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  std::vector<std::string> lines;
  std::set_difference(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(lines));
  std::string out;
  for (const std::string& line : lines) (out += line) += '\n';
  return out;
}

class SampleFindings : public testing::TestWithParam<std::string_view> {};

TEST_P(SampleFindings, AreThoseWorkedOutByHand) {
  const Lab lab = sample(GetParam());
  const Analysis analysis = analyse(lab);
  const auto found = test::findings_found(analysis);
  const auto expected = test::findings_expected(GetParam());
  EXPECT_EQ(only_in(expected, found), "") << "expected and not found";
  EXPECT_EQ(only_in(found, expected), "") << "found and not expected";
}

TEST_P(SampleFindings, FixesTakeTheirFindingAway) {
  const Lab lab = sample(GetParam());
  const Analysis analysis = analyse(lab);
  for (const Finding& f : analysis.findings()) {
    const auto fix = analysis.fix(f);
    if (!fix) continue;
    Lab mended = lab;
    const auto applied = apply(mended, fix->edit);
    ASSERT_TRUE(applied.has_value()) << f.rule->id << ": " << english(applied.error());
    EXPECT_TRUE(*applied) << f.rule->id;
    const Analysis after = analyse(mended);
    for (const Finding& g : after.findings())
      EXPECT_FALSE(g.rule == f.rule && g.places == f.places && g.when == f.when) << f.rule->id;
  }
}

std::string test_name(const testing::TestParamInfo<std::string_view>& sample_name) {
  std::string name(sample_name.param);
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(All, SampleFindings, testing::ValuesIn(test::sample_names()), test_name);

// First group of every match, over the lines of a file of samples/.
std::set<int> numbers_in(const std::string& file, const std::regex& form) {
  std::ifstream in(std::string(SNUG_SOURCE_DIR) + "/samples/" + file);
  EXPECT_TRUE(in.is_open()) << file;
  std::set<int> out;
  for (std::string line; std::getline(in, line);) {
    std::smatch parts;
    if (!std::regex_search(line, parts, form)) continue;
    int n = 0;
    const std::string digits = parts[1];
    std::from_chars(digits.data(), digits.data() + digits.size(), n);
    out.insert(n);
  }
  return out;
}

TEST(Mistakes, EachOneOfTheListHasItsFinding) {
  for (const std::string name : {"mistakes", "first-draft", "old-pc"}) {
    const std::set<int> listed = numbers_in(name + ".md", std::regex("^([0-9]+)\\. "));
    const std::set<int> expected =
        numbers_in("expected/" + name + ".findings", std::regex("^[a-z].* # ([0-9]+)"));
    EXPECT_GE(listed.size(), 20U) << name;
    EXPECT_EQ(listed, expected) << name;
  }
}

// A rule that no sample shows is listed here with the reason.
TEST(Samples, ShowEveryRuleThatTheyCan) {
  const std::set<std::string_view> left_out{
      "domain-form", "domain-localhost", // a lab has one domain, which is wrong in one way
      "no-volume"};                      // every sample has a volume, so that disks are checked
  std::set<std::string_view> seen;
  std::vector<Lab> labs;
  for (const std::string_view name : test::sample_names()) labs.push_back(sample(name));
  for (const Lab& lab : labs) {
    const Analysis a = analyse(lab);
    for (const Finding& f : a.findings()) seen.insert(f.rule->id);
  }
  for (const Rule& rule : rules()) EXPECT_NE(seen.contains(rule.id), left_out.contains(rule.id)) << rule.id;
}

} // namespace
} // namespace snug
