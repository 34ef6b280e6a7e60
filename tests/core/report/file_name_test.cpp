#include "core/report/escape.h"

#include "tests/support/hostile.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <set>

namespace snug {
namespace {

std::string one(std::string_view text, std::string_view extension = ".svg") {
  FileNames taken;
  return taken.next(text, extension);
}

TEST(FileName, KeepsWhatIsHarmless) {
  EXPECT_EQ(one("Skerry Ferries - week 1"), "Skerry Ferries - week 1.svg");
  EXPECT_EQ(one("Übung 3 甲板"), "Übung 3 甲板.svg");
  EXPECT_EQ(one("Straße"), "Strasse.svg");
}

TEST(FileName, IsNeverAPathOrAnOption) {
  EXPECT_EQ(one("../../etc/passwd"), "etc-passwd.svg");
  EXPECT_EQ(one("C:\\x\\y"), "C-x-y.svg");
  EXPECT_EQ(one("..", ""), "unnamed");
  EXPECT_EQ(one(""), "unnamed.svg");
  EXPECT_EQ(one("-rf"), "rf.svg");
  EXPECT_EQ(one(".hidden"), "hidden.svg");
  EXPECT_EQ(one("name. . ", ""), "name");
  EXPECT_EQ(one("a\"<b>|?*"), "a-b.svg");
}

// Microsoft "Naming Files, Paths, and Namespaces": reserved with any extension.
TEST(FileName, IsNeverADevice) {
  for (const char* device :
       {"CON", "con", "PRN", "Aux", "NUL", "COM1", "com9", "LPT1", "lpt0", "CONIN$", "aux.txt", "nul .tar"})
    EXPECT_TRUE(one(device).starts_with('_')) << one(device);
  EXPECT_EQ(one("console"), "console.svg");
  EXPECT_EQ(one("com10"), "com10.svg");
}

TEST(FileName, DiffersInMoreThanCase) {
  FileNames taken;
  EXPECT_EQ(taken.next("Deck", ".svg"), "Deck.svg");
  EXPECT_EQ(taken.next("DECK", ".svg"), "DECK-2.svg");
  EXPECT_EQ(taken.next("deck", ".svg"), "deck-3.svg");
  EXPECT_EQ(taken.next("deck", ".png"), "deck.png");
  EXPECT_EQ(taken.next("Älter", ".svg"), "Älter.svg");
  EXPECT_EQ(taken.next("älter", ".svg"), "älter-2.svg");
  EXPECT_EQ(taken.next("a\u0308lter", ".svg"), "alter.svg");
  EXPECT_EQ(taken.next("ПРИЧАЛ", ".svg"), "ПРИЧАЛ.svg");
  EXPECT_EQ(taken.next("причал", ".svg"), "причал-2.svg");
}

TEST(FileName, IsShortAndCutBetweenCharacters) {
  const std::string name = one(std::string(300, 'x'));
  EXPECT_LE(name.size(), kFileNameBytes);
  EXPECT_GE(name.size(), 90U);
  EXPECT_TRUE(name.ends_with(".svg"));
  std::string wide;
  for (int i = 0; i < 100; ++i) wide += "甲";
  EXPECT_EQ((one(wide).size() - 4) % 3, 0U);
}

// RELIABILITY row 28.
TEST(FileName, StaysInsideItsFolder) {
  std::mt19937 random(28);
  FileNames taken;
  std::set<std::string> names;
  const std::filesystem::path folder = "/folder";
  for (int i = 0; i < test::scaled(10000); ++i) {
    const std::string name = taken.next(test::hostile_label(random), ".csv");
    ASSERT_TRUE(names.insert(name).second) << name;
    ASSERT_LE(name.size(), kFileNameBytes);
    const std::filesystem::path path = (folder / name).lexically_normal();
    ASSERT_EQ(path.parent_path(), folder) << name;
    ASSERT_EQ(path.filename(), name);
    ASSERT_EQ(name.find_first_of("/\\:*?\"<>|\n"), std::string::npos) << name;
  }
}

} // namespace
} // namespace snug
