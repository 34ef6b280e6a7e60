#include "core/document/lock.h"

#include "core/document/save.h"
#include "tests/support/nobody.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

namespace snug {
namespace {

using test::TempFolder;

TEST(Lock, OneHolderAndTheOtherIsToldWho) {
  const TempFolder f;
  test::put_bytes(f.path("a"), "x");
  std::filesystem::create_symlink("a", f.path("b"));
  {
    const auto first = FileLock::take(f.path("a"));
    ASSERT_TRUE(first) << english(first.error());
    EXPECT_TRUE(first->is_held());
    for (const char* name : {"a", "b"}) {
      const auto second = FileLock::take(f.path(name));
      ASSERT_FALSE(second);
      EXPECT_EQ(second.error().message.id(), "lock-held");
      EXPECT_NE(english(second.error()).find("process " + std::to_string(::getpid()) + " on "),
                std::string::npos);
    }
    EXPECT_TRUE(FileLock::take(f.path("c")));
  }
  EXPECT_EQ(f.names(), (std::vector<std::string>{"a", "b"}));
  EXPECT_TRUE(FileLock::take(f.path("a")));
}

TEST(Lock, WhatAKilledHolderLeftDoesNotMatter) {
  const TempFolder f;
  test::put_bytes(f.path(".a.lock"), "process 1 on elsewhere");
  const auto lock = FileLock::take(f.path("a"));
  ASSERT_TRUE(lock);
  EXPECT_TRUE(lock->is_held());
}

TEST(Lock, MovesWithItsOwner) {
  const TempFolder f;
  auto first = FileLock::take(f.path("a"));
  ASSERT_TRUE(first);
  FileLock kept = std::move(*first);
  EXPECT_TRUE(kept.is_held());
  EXPECT_FALSE(FileLock::take(f.path("a")));
}

std::string beside(const std::string& folder) { return folder + "/.a.lock"; }

// Nobody can save there, so nothing is to be held; the file may be read.
TEST(Lock, InAReadOnlyFolderNothingIsHeldAndNothingIsLeft) {
  const TempFolder f;
  const std::string folder = f.path("shelf");
  std::filesystem::create_directory(folder);
  test::put_bytes(folder + "/a", "x");
  ::chmod(folder.c_str(), 0555);
  {
    const test::Nobody nobody;
    const auto lock = FileLock::take(folder + "/a");
    ASSERT_TRUE(lock) << english(lock.error());
    EXPECT_FALSE(lock->is_held());
    const auto saved = save_file(folder + "/a", "y");
    ASSERT_FALSE(saved);
    EXPECT_EQ(english(saved.error()).rfind(folder + "/a: ", 0), 0U) << english(saved.error());
  }
  EXPECT_EQ(test::bytes_of(folder + "/a"), "x");
  EXPECT_FALSE(std::filesystem::exists(beside(folder)));
}

// Somebody with more rights has it open: who cannot write the folder is told all the same.
TEST(Lock, AHolderIsSeenThroughALockThatMayOnlyBeRead) {
  const TempFolder f;
  const std::string folder = f.path("shelf");
  std::filesystem::create_directory(folder);
  test::put_bytes(folder + "/a", "x");
  auto held = FileLock::take(folder + "/a");
  ASSERT_TRUE(held);
  ASSERT_TRUE(held->is_held());
  ::chmod(folder.c_str(), 0555);
  if (::geteuid() == 0) { // for an owner the lock itself is no obstacle
    const test::Nobody nobody;
    const auto second = FileLock::take(folder + "/a");
    ASSERT_FALSE(second);
    EXPECT_EQ(second.error().message.id(), "lock-held");
    EXPECT_NE(english(second.error()).find("process " + std::to_string(::getpid())), std::string::npos)
        << english(second.error());
  }
  ::chmod(folder.c_str(), 0755);
}

// Left by another user's process: it is in nobody's way where the folder may be written.
TEST(Lock, WhatAnotherUserLeftIsTakenAwayWhereTheFolderAllowsIt) {
  const TempFolder f;
  const std::string folder = f.path("shelf");
  std::filesystem::create_directory(folder);
  ::chmod(folder.c_str(), 0777);
  test::put_bytes(beside(folder), "process 1 on elsewhere");
  ::chmod(beside(folder).c_str(), 0444);
  const test::Nobody nobody;
  const auto lock = FileLock::take(folder + "/a");
  ASSERT_TRUE(lock) << english(lock.error());
  EXPECT_TRUE(lock->is_held());
  EXPECT_NE(test::bytes_of(beside(folder)).find(std::to_string(::getpid())), std::string::npos);
}

TEST(Lock, MissingFolderIsSaid) {
  const TempFolder f;
  const auto lock = FileLock::take(f.path("missing/a"));
  ASSERT_FALSE(lock);
  EXPECT_EQ(lock.error().message.id(), "lock-failed");
}

} // namespace
} // namespace snug
