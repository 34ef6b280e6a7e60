#include "core/document/lab_folder.h"

#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <filesystem>

namespace snug::test {
namespace {

TEST(LabFolder, OnlyLabsThatAreNotHiddenInOrderAndSoManyAtMost) {
  const TempFolder at;
  for (const char* name :
       {"b.snuglab", "a.snuglab", ".hidden.snuglab", "notes.txt", "c.snuglab~", "c.snuglab"})
    put_bytes(at.path(name), "x");
  std::filesystem::create_directory(at.path("inner"));
  put_bytes(at.path("inner/d.snuglab"), "x");
  const std::vector<std::string> all{at.path("a.snuglab"), at.path("b.snuglab"), at.path("c.snuglab")};
  EXPECT_EQ(lab_files(at.path(), 9), all);
  EXPECT_EQ(lab_files(at.path(), 2), (std::vector<std::string>{all[0], all[1]}));
  EXPECT_TRUE(lab_files(at.path("none"), 9).empty());
  EXPECT_TRUE(lab_files(at.path("notes.txt"), 9).empty());
  EXPECT_TRUE(lab_files({}, 9).empty());
}

TEST(LabFolder, AFreeFileIsNamedAfterTheLab) {
  const TempFolder at;
  const auto name = [&](std::string_view of) {
    const std::string path = free_lab_file(at.path(), of, "lab");
    return path.substr(at.path().size() + 1);
  };
  EXPECT_EQ(name("Web pair"), "web-pair.snuglab");
  EXPECT_EQ(name("../../etc/passwd"), "etc-passwd.snuglab");
  EXPECT_EQ(name("船"), "lab.snuglab");
  EXPECT_EQ(name(""), "lab.snuglab");
  EXPECT_EQ(name(std::string(300, 'x')), std::string(60, 'x') + ".snuglab");
  put_bytes(at.path("lab.snuglab"), "x");
  std::filesystem::create_symlink(at.path("nowhere"), at.path("lab-2.snuglab"));
  EXPECT_EQ(name("Lab"), "lab-3.snuglab") << "a link that leads nowhere is there as well";
}

} // namespace
} // namespace snug::test
