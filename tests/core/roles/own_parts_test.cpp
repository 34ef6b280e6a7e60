#include "core/roles/own_parts.h"

#include "core/document/write.h"
#include "tests/support/sample.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>

namespace snug::test {
namespace {

std::vector<std::string> names(const OwnParts& all) {
  std::vector<std::string> out;
  for (const OwnPart& p : all.parts) out.push_back(p.name());
  return out;
}

TEST(OwnParts, NothingIsThereWithoutAFolder) {
  const TempFolder home;
  for (const std::string& folder : {std::string(), home.path("none")}) {
    const OwnParts all = own_parts(folder);
    EXPECT_TRUE(all.parts.empty());
    EXPECT_TRUE(all.problems.empty());
  }
  EXPECT_FALSE(keep_part({}, titled("Web pair")));
}

TEST(OwnParts, KeptOnesAreReadAsTheyWereByName) {
  const TempFolder home;
  const std::string folder = home.path("config/parts");
  for (const char* name : {"  Web pair ", "Archive", "船"}) {
    const auto kept = keep_part(folder, titled(name));
    ASSERT_TRUE(kept) << english(kept.error());
  }
  const OwnParts all = own_parts(folder);
  EXPECT_TRUE(all.problems.empty());
  EXPECT_EQ(names(all), (std::vector<std::string>{"Archive", "Web pair", "船"}));
  EXPECT_EQ(all.parts[1].lab, titled("Web pair"));
  EXPECT_EQ(all.parts[1].file, folder + "/web-pair.snuglab");
  EXPECT_EQ(all.parts[2].file, folder + "/part.snuglab");
}

TEST(OwnParts, NamesAreRefusedThatSayNothingOrAreTaken) {
  const TempFolder home;
  ASSERT_TRUE(keep_part(home.path(), titled("Web pair")));
  const auto none = keep_part(home.path(), titled(" \t"));
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().message.id(), "own-part-no-name");
  const auto same = keep_part(home.path(), titled("web PAIR"));
  ASSERT_FALSE(same);
  EXPECT_EQ(same.error().message.id(), "own-part-same-name");
  // Another name that would have the same file gets another file.
  const auto other = keep_part(home.path(), titled("Web, pair"));
  ASSERT_TRUE(other);
  EXPECT_EQ(other->file, home.path("web-pair-2.snuglab"));
  const auto renamed = rename_part(home.path(), *other, "Web pair");
  ASSERT_FALSE(renamed);
  EXPECT_EQ(renamed.error().message.id(), "own-part-same-name");
}

TEST(OwnParts, RenamedRemovedAndBroughtBack) {
  const TempFolder home;
  const auto kept = keep_part(home.path(), titled("Web pair"));
  ASSERT_TRUE(kept);
  const auto renamed = rename_part(home.path(), *kept, " Two webs ");
  ASSERT_TRUE(renamed);
  EXPECT_EQ(names(own_parts(home.path())), std::vector<std::string>{"Two webs"});
  EXPECT_TRUE(rename_part(home.path(), *renamed, "Two Webs")) << "its own name in other letters";
  const OwnPart part = own_parts(home.path()).parts.front();
  const std::string bytes = bytes_of(part.file);
  ASSERT_TRUE(remove_part(part));
  EXPECT_TRUE(own_parts(home.path()).parts.empty());
  EXPECT_TRUE(remove_part(part)) << "one that is gone is gone";
  ASSERT_TRUE(bring_back(home.path(), part));
  EXPECT_EQ(bytes_of(part.file), bytes);
  const auto again = bring_back(home.path(), part);
  ASSERT_TRUE(again);
  EXPECT_NE(again->file, part.file) << "nothing is written over";
}

TEST(OwnParts, ADamagedFileIsToldAndLeftAlone) {
  const TempFolder home;
  ASSERT_TRUE(keep_part(home.path(), titled("Web pair")));
  put_bytes(home.path("broken.snuglab"), "{\"format\": \"snuglab\",\n \"version\": 1, \"machines\": [}");
  put_bytes(home.path("nothing.snuglab"), "{\"format\": \"snuglab\", \"version\": 1}");
  put_bytes(home.path("notes.txt"), "not a part");
  const OwnParts all = own_parts(home.path());
  EXPECT_EQ(names(all), std::vector<std::string>{"Web pair"});
  ASSERT_EQ(all.problems.size(), 2U);
  EXPECT_EQ(all.problems[0].file, home.path("broken.snuglab"));
  EXPECT_EQ(all.problems[0].line, 2);
  EXPECT_EQ(all.problems[1].message.id(), "own-part-empty");
  ASSERT_TRUE(keep_part(home.path(), titled("Broken")));
  EXPECT_EQ(bytes_of(home.path("broken.snuglab")),
            "{\"format\": \"snuglab\",\n \"version\": 1, \"machines\": [}");
}

TEST(OwnParts, AFolderThatCannotBeMadeIsSaid) {
  const TempFolder home;
  put_bytes(home.path("file"), "x");
  const auto kept = keep_part(home.path("file/parts"), titled("Web pair"));
  ASSERT_FALSE(kept);
  EXPECT_EQ(kept.error().message.id(), "own-part-folder");
}

TEST(OwnParts, TheFolderStandsWithThePersonsSettings) {
  ASSERT_EQ(setenv("XDG_CONFIG_HOME", "/somewhere", 1), 0);
  EXPECT_EQ(own_parts_folder(), "/somewhere/snuglab/parts");
  ASSERT_EQ(setenv("XDG_CONFIG_HOME", "not/absolute", 1), 0);
  const char* home = std::getenv("HOME");
  EXPECT_EQ(own_parts_folder(), home && *home ? std::string(home) + "/.config/snuglab/parts" : "");
  ASSERT_EQ(unsetenv("XDG_CONFIG_HOME"), 0);
}

} // namespace
} // namespace snug::test
