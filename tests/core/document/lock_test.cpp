#include "core/document/lock.h"

#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
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

TEST(Lock, MissingFolderIsSaid) {
  const TempFolder f;
  const auto lock = FileLock::take(f.path("missing/a"));
  ASSERT_FALSE(lock);
  EXPECT_EQ(lock.error().message.id(), "lock-failed");
}

} // namespace
} // namespace snug
