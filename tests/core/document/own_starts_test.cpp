#include "core/document/own_starts.h"

#include "core/document/write.h"
#include "tests/support/sample.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <filesystem>

namespace snug::test {
namespace {

std::vector<std::string> names(const OwnStarts& all) {
  std::vector<std::string> out;
  for (const OwnStart& s : all.starts) out.push_back(s.name());
  return out;
}

TEST(OwnStarts, NothingIsThereWithoutAFolder) {
  const TempFolder home;
  for (const std::string& folder : {std::string(), home.path("none")}) {
    EXPECT_TRUE(own_starts(folder).starts.empty());
    EXPECT_TRUE(own_starts(folder).problems.empty());
  }
  const auto kept = keep_start({}, titled("Port"));
  ASSERT_FALSE(kept);
  EXPECT_EQ(kept.error().message.id(), "own-start-no-folder");
}

TEST(OwnStarts, KeptOnesAreReadAsTheyWereByName) {
  const TempFolder home;
  const std::string folder = home.path("Templates/Snuglab");
  for (const char* name : {"  Port ", "Archive", "船"}) {
    const auto kept = keep_start(folder, titled(name));
    ASSERT_TRUE(kept) << english(kept.error());
  }
  const OwnStarts all = own_starts(folder);
  EXPECT_TRUE(all.problems.empty());
  EXPECT_EQ(names(all), (std::vector<std::string>{"Archive", "Port", "船"}));
  EXPECT_EQ(all.starts[1].lab, titled("Port"));
  EXPECT_EQ(all.starts[1].file, folder + "/port.snuglab");
  EXPECT_EQ(bytes_of(all.starts[1].file), write_lab(titled("Port")));
}

TEST(OwnStarts, OneWithoutATitleHasTheNameOfItsFile) {
  const TempFolder home;
  put_bytes(home.path("Second term.snuglab"), write_lab(titled("")));
  EXPECT_EQ(names(own_starts(home.path())), std::vector<std::string>{"Second term"});
  ASSERT_NE(start_named(own_starts(home.path()), " second TERM "), nullptr);
  EXPECT_EQ(start_named(own_starts(home.path()), "second"), nullptr);
}

TEST(OwnStarts, ANameThatIsTakenIsReplacedOnlyWhereThatIsSaid) {
  const TempFolder home;
  ASSERT_TRUE(keep_start(home.path(), titled("Port")));
  const std::string before = bytes_of(home.path("port.snuglab"));
  Lab other = titled("PORT");
  other.facts.author = "somebody else";
  const auto refused = keep_start(home.path(), other);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().message.id(), "own-start-same-name");
  EXPECT_EQ(bytes_of(home.path("port.snuglab")), before);
  const auto kept = keep_start(home.path(), other, IfTaken::replace);
  ASSERT_TRUE(kept);
  EXPECT_EQ(kept->file, home.path("port.snuglab"));
  EXPECT_EQ(bytes_of(kept->file), write_lab(other));
  // Another name that would have the same file gets another file.
  const auto beside = keep_start(home.path(), titled("Port!"), IfTaken::replace);
  ASSERT_TRUE(beside);
  EXPECT_EQ(beside->file, home.path("port-2.snuglab"));
  EXPECT_EQ(own_starts(home.path()).starts.size(), 2U);
}

TEST(OwnStarts, NamesThatCannotBeReadAgainAreNotWritten) {
  const TempFolder home;
  for (const auto& [name, id] :
       {std::pair{std::string(" \t"), "own-start-no-name"}, std::pair{std::string(201, 'x'), "value-long"}}) {
    const auto kept = keep_start(home.path("new"), titled(name));
    ASSERT_FALSE(kept);
    EXPECT_EQ(kept.error().message.id(), id);
  }
  EXPECT_FALSE(std::filesystem::exists(home.path("new")));
}

TEST(OwnStarts, ADamagedFileIsToldAndLeftAlone) {
  const TempFolder home;
  ASSERT_TRUE(keep_start(home.path(), titled("Port")));
  const std::string broken = "{\"format\": \"snuglab\",\n \"version\": 1, \"machines\": [}";
  put_bytes(home.path("broken.snuglab"), broken);
  std::filesystem::create_directory(home.path("folder.snuglab"));
  const OwnStarts all = own_starts(home.path());
  EXPECT_EQ(names(all), std::vector<std::string>{"Port"});
  ASSERT_EQ(all.problems.size(), 2U);
  EXPECT_EQ(all.problems[0].file, home.path("broken.snuglab"));
  EXPECT_EQ(all.problems[0].line, 2);
  EXPECT_EQ(all.problems[1].file, home.path("folder.snuglab"));
  ASSERT_TRUE(keep_start(home.path(), titled("Broken"), IfTaken::replace));
  EXPECT_EQ(bytes_of(home.path("broken.snuglab")), broken);
}

TEST(OwnStarts, AFolderThatCannotBeMadeIsSaid) {
  const TempFolder home;
  put_bytes(home.path("file"), "x");
  const auto kept = keep_start(home.path("file/starts"), titled("Port"));
  ASSERT_FALSE(kept);
  EXPECT_EQ(kept.error().message.id(), "own-start-folder");
}

} // namespace
} // namespace snug::test
