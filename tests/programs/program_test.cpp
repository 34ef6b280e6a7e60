// The two programs as processes: help, misuse, and no display.

#include "tests/support/process.h"
#include "tests/support/temp_folder.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug {
namespace {

using test::run_program;

// Nothing of the surroundings but what is given.
test::Ran window(const std::vector<std::string>& surroundings, const std::vector<std::string>& args) {
  std::vector<std::string> words{"/usr/bin/env", "-i"};
  words.insert(words.end(), surroundings.begin(), surroundings.end());
  words.emplace_back(SNUG_WINDOW);
  words.insert(words.end(), args.begin(), args.end());
  return run_program(words);
}

TEST(WindowProgram, HelpCallsItByItsName) {
  const auto ran = window({}, {"--help"});
  EXPECT_EQ(ran.code, 0) << ran.err;
  EXPECT_NE(ran.out.find("snuglab [options] [FILE]"), std::string::npos) << ran.out;
  EXPECT_EQ(ran.out.find("executable"), std::string::npos) << ran.out;
}

TEST(WindowProgram, MisuseIsCodeTwoWithOneLineThatSaysWhatWasMeant) {
  const std::vector<std::pair<std::vector<std::string>, std::string>> cases{
      {{"--sampel", "x"}, "there is no option \"sampel\": perhaps \"sample\" was meant; see snuglab --help"},
      {{"--zzzzzz"}, "there is no option \"zzzzzz\"; see snuglab --help"},
      {{"--theme"}, "Missing value after '--theme'. See snuglab --help"},
      {{"--theme", "pink"}, "\"pink\" is no theme: say light or dark"},
      {{"--sample", "nothing"}, "there is no sample \"nothing\"; snuglab-cli new --list names them"},
      {{"--sample", ""}, "there is no sample \"\"; snuglab-cli new --list names them"},
      {{"a.snuglab", "b.snuglab"}, "one lab at a time; see snuglab --help"}};
  for (const auto& [args, line] : cases) {
    const auto ran = window({}, args);
    EXPECT_EQ(ran.code, 2);
    EXPECT_EQ(ran.out, "");
    EXPECT_EQ(ran.err, "snuglab: " + line + "\n");
  }
}

// Whether no display is named or the one that is named does not answer.
TEST(WindowProgram, WithoutADisplayItSaysWhatToDo) {
  const test::TempFolder home;
  for (const char* display : {"NOTHING=1", "DISPLAY=:59871", "WAYLAND_DISPLAY=none-such"}) {
    const auto ran = window({"HOME=" + home.path(), display}, {});
    EXPECT_EQ(ran.code, 5) << display;
    EXPECT_EQ(ran.out, "");
    EXPECT_EQ(ran.err.rfind("snuglab: there is no display for a window here: start it on a desktop, or use "
                            "snuglab-cli",
                            0),
              0U)
        << ran.err;
    EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << ran.err;
  }
  EXPECT_TRUE(home.names().empty());
}

// Whether the locales could be made: the system's compiler of locales and its sources may be missing.
bool make_locales(const test::TempFolder& f) {
  for (const char* name : {"de_DE", "tr_TR", "ar_EG"})
    if (run_program({"localedef", "-i", name, "-f", "UTF-8", f.path(std::string(name) + ".UTF-8")}).code != 0)
      return false;
  const auto point =
      run_program({"/usr/bin/env", "LOCPATH=" + f.path(), "LC_ALL=de_DE.UTF-8", "locale", "decimal_point"});
  EXPECT_EQ(point.out, ",\n");
  return true;
}

// RELIABILITY row 19: nothing of the surroundings gets into what is handed out, nor when it was made.
TEST(CommandLine, ExportsAreTheSameBytesInEveryLocaleAndEveryRun) {
  const test::TempFolder f, locales;
  const bool made = make_locales(locales);
  RecordProperty("with_foreign_locales", made ? "yes" : "no");
  const std::string lab = std::string(SNUG_SOURCE_DIR) + "/samples/skerry-ferries.snuglab";
  const std::vector<std::vector<std::string>> kinds{
      {"draw", lab, "--format", "svg"},       {"draw", lab, "--format", "png", "--scale", "50"},
      {"draw", lab, "--format", "pdf"},       {"table", lab, "--format", "csv"},
      {"table", lab, "--format", "markdown"}, {"table", lab, "--format", "html"},
      {"table", lab, "--format", "json"},     {"check", lab, "--all", "--format", "markdown"},
      {"check", lab, "--all", "--json"},      {"reach", lab, "--all", "--csv"}};
  const std::vector<std::vector<std::string>> surroundings{
      {"LC_ALL=C", "TZ=UTC"},
      {"LC_ALL=de_DE.UTF-8", "TZ=Asia/Tokyo", "QT_HASH_SEED=7"},
      {"LC_ALL=tr_TR.UTF-8", "TZ=America/St_Johns", "LANG=tr_TR.UTF-8"},
      {"LC_ALL=ar_EG.UTF-8", "TZ=Asia/Kathmandu", "QT_SCALE_FACTOR=2"}};
  for (const auto& kind : kinds) {
    std::string first;
    for (const auto& surrounding : surroundings) {
      std::vector<std::string> words{"/usr/bin/env", "-i", "HOME=" + f.path(), "LOCPATH=" + locales.path()};
      words.insert(words.end(), surrounding.begin(), surrounding.end());
      words.emplace_back(SNUG_CLI);
      words.insert(words.end(), kind.begin(), kind.end());
      words.insert(words.end(), {"-o", f.path("out")});
      const auto ran = run_program(words);
      ASSERT_LE(ran.code, 1) << ran.err;
      const std::string bytes = test::bytes_of(f.path("out"));
      ASSERT_GT(bytes.size(), 100U) << kind[0] << " " << kind.back();
      if (first.empty()) first = bytes;
      EXPECT_TRUE(bytes == first) << kind[0] << " " << kind.back() << " under " << surrounding[0];
    }
  }
}

} // namespace
} // namespace snug
