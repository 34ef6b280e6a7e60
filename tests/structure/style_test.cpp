#include "tests/structure/ladder.h"

#include <gtest/gtest.h>

#include <map>
#include <regex>

namespace snug::structure {
namespace {

const std::filesystem::path kRoot = SNUG_SOURCE_DIR;

std::vector<std::string> program_code() {
  std::vector<std::string> out;
  for (const char* part : {"core", "ui", "app"})
    for (std::string& file : code_under(kRoot, part)) out.push_back(std::move(file));
  return out;
}

TEST(Style, HeadersAreIncludedOnce) {
  for (const std::string& file : program_code()) {
    if (!file.ends_with(".h")) continue;
    EXPECT_TRUE(read_file(kRoot / file).starts_with("#pragma once\n")) << file;
  }
}

// Numbers read or written through these depend on the locale or lose digits (RELIABILITY row 19 of the
// design).
TEST(Style, NumbersDoNotGoThroughTheLocale) {
  static const std::regex banned(
      R"re(\b(std::sto(i|l|ll|ul|ull|f|d|ld)|atoi|atof|atol|strto\w+|s?n?printf|setlocale)\s*\()re");
  for (const std::string& file : program_code()) {
    const std::string source = read_file(kRoot / file);
    std::smatch found;
    EXPECT_FALSE(std::regex_search(source, found, banned)) << file << ": " << found.str();
  }
}

TEST(Style, CoreHoldsNoFloatingPoint) {
  static const std::regex banned(R"re(\b(float|double)\b)re");
  for (const std::string& file : code_under(kRoot, "core/model")) {
    if (!file.ends_with(".h")) continue;
    EXPECT_FALSE(
        std::regex_search(std::regex_replace(read_file(kRoot / file), std::regex("//[^\n]*"), ""), banned))
        << file;
  }
}

// The window translates a sentence by its id, and a person accepts a finding by it: one id, one sentence.
TEST(Style, EverySentenceHasItsOwnId) {
  static const std::regex form(R"re(constexpr\s+Template\s+\w+\s*\{\s*"([^"]*)")re");
  static const std::regex slug("[a-z0-9]+(-[a-z0-9]+)*");
  std::map<std::string, std::string> seen;
  for (const std::string& file : code_under(kRoot, "core/text")) {
    const std::string source = read_file(kRoot / file);
    for (std::sregex_iterator it(source.begin(), source.end(), form), end; it != end; ++it) {
      const std::string id = (*it)[1];
      EXPECT_TRUE(std::regex_match(id, slug)) << file << ": \"" << id << "\" is not in kebab case";
      const auto [at, fresh] = seen.emplace(id, file);
      EXPECT_TRUE(fresh) << "\"" << id << "\" stands in " << at->second << " and in " << file;
    }
  }
  EXPECT_FALSE(seen.empty());
}

} // namespace
} // namespace snug::structure
