#include "tests/structure/ladder.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace snug::structure {
namespace {

const std::filesystem::path kRoot = SNUG_SOURCE_DIR;

std::vector<Rung> project_ladder() { return read_ladder(read_file(kRoot / "DEVELOPERS.md")); }

const std::vector<Rung> kSmall{{"core/base", {"core/text"}},
                               {"core/text", {"core/base"}},
                               {"core/net", {"core/base"}},
                               {"ui", {"core"}},
                               {"app/cli", {"core", "ui"}}};

TEST(Ladder, IsReadFromTheTable) {
  const auto rungs =
      read_ladder("| `core/no` | x | `y` |\n## Ladder\n| folder | purpose | may use |\n| --- | --- | --- |\n"
                  "| `core/base` | values | |\n| `core/net` | `a` and b | `base`, `qt` |\n"
                  "| `ui` | window | `core` |\n## Other\n| `core/late` | x | |\n");
  const std::vector<Rung> expected{{"core/base", {}}, {"core/net", {"core/base", "qt"}}, {"ui", {"core"}}};
  EXPECT_EQ(rungs, expected);
}

TEST(Ladder, FindsIncludes) {
  const auto found =
      includes_in("core/a/b.cpp", "#pragma once\n#include \"core/net/mac.h\" // why\n# include <vector>\n"
                                  "// #include \"ui/x.h\"\n");
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].target, "core/net/mac.h");
  EXPECT_EQ(found[0].line, 2);
  EXPECT_TRUE(found[0].quoted);
  EXPECT_EQ(found[1].target, "vector");
  EXPECT_FALSE(found[1].quoted);
}

TEST(Ladder, AllowsStepsDown) {
  for (const Include& fine : {Include{"core/net/mac.cpp", 1, "core/net/mac.h", true},
                              {"core/net/mac.h", 1, "core/base/x.h", true},
                              {"ui/canvas/a.cpp", 1, "core/net/mac.h", true},
                              {"ui/canvas/a.cpp", 1, "ui/theme/x.h", true},
                              {"ui/a.cpp", 1, "QWidget", false},
                              {"core/net/a.cpp", 1, "nlohmann/json.hpp", false},
                              {"core/net/a.cpp", 1, "vector", false},
                              {"app/cli/a.cpp", 1, "ui/diagram/p.h", true},
                              {"ui/a.cpp", 9, "a.moc", true}})
    EXPECT_EQ(complaint(kSmall, fine), "");
}

TEST(Ladder, RefusesStepsUpAndStrangers) {
  for (const Include& wrong : {Include{"core/base/x.h", 3, "core/net/mac.h", true},
                               {"core/net/mac.h", 1, "ui/a.h", true},
                               {"core/net/mac.h", 1, "core/text/t.h", true},
                               {"ui/a.cpp", 1, "app/cli/a.h", true},
                               {"core/net/mac.h", 1, "mac2.h", true},
                               {"core/odd/x.h", 1, "core/base/x.h", true},
                               {"core/net/a.cpp", 1, "QString", false},
                               {"core/net/a.cpp", 1, "QtCore/qglobal.h", false},
                               {"core/net/a.cpp", 1, "boost/icl/interval_map.hpp", false},
                               {"core/net/a.cpp", 1, "core/network/mac.h", true}})
    EXPECT_NE(complaint(kSmall, wrong), "") << wrong.file << " includes " << wrong.target;
}

// Only base and text, which are one rung, may use each other.
TEST(Ladder, EachRungUsesOnlyRungsAbove) {
  const auto rungs = project_ladder();
  ASSERT_GE(rungs.size(), 8U);
  std::set<std::string> above{"core"};
  for (const Rung& rung : rungs) {
    for (const std::string& used : rung.may_use)
      EXPECT_TRUE(above.contains(used) || (rung.folder == "core/base" && used == "core/text"))
          << rung.folder << " may use " << used << ", which is not above it";
    EXPECT_TRUE(!rung.folder.starts_with("core/") || !rung.may_use.contains("core")) << rung.folder;
    above.insert(rung.folder);
  }
}

TEST(Ladder, ListsEveryFolder) {
  const auto rungs = project_ladder();
  for (const auto& entry : std::filesystem::directory_iterator(kRoot / "core")) {
    if (!entry.is_directory()) continue;
    const std::string folder = "core/" + entry.path().filename().string();
    EXPECT_TRUE(std::any_of(rungs.begin(), rungs.end(), [&](const Rung& r) { return r.folder == folder; }))
        << folder << " is not in the ladder of DEVELOPERS.md";
  }
}

TEST(Ladder, NoIncludeStepsUp) {
  const auto rungs = project_ladder();
  int seen = 0;
  for (const char* part : {"core", "ui", "app"})
    for (const std::string& file : code_under(kRoot, part))
      for (const Include& include : includes_in(file, read_file(kRoot / file))) {
        EXPECT_EQ(complaint(rungs, include), "");
        ++seen;
      }
  EXPECT_GT(seen, 20);
}

// Sentences lie below everything that says them: they use the Template of base and nothing else.
TEST(Ladder, SentencesUseOnlyMessages) {
  for (const std::string& file : code_under(kRoot, "core/text"))
    for (const Include& include : includes_in(file, read_file(kRoot / file)))
      EXPECT_TRUE(!include.quoted || include.target == "core/base/message.h" ||
                  include.target.starts_with("core/text/"))
          << file << ":" << include.line << ": " << include.target;
}

} // namespace
} // namespace snug::structure
