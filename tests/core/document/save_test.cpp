// RELIABILITY 1 and row 39 of the design. Faults (kill, full disk, I/O errors) are in tests/faults.

#include "core/document/save.h"

#include "core/document/read.h"
#include "tests/support/temp_folder.h"

#include <functional>
#include <grp.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace snug {
namespace {

using test::bytes_of;
using test::put_bytes;
using test::TempFolder;
namespace fs = std::filesystem;

std::string complaint(const std::string& path) {
  const auto saved = save_file(path, "new");
  return saved ? "saved" : std::string(saved.error().message.id());
}
unsigned mode_of(const std::string& path) {
  struct stat facts {};
  return ::stat(path.c_str(), &facts) == 0 ? facts.st_mode & 07777U : 0;
}
// What `work` says when it runs as somebody without privileges.
std::string as_nobody(const std::function<std::string()>& work) {
  if (::geteuid() != 0) return work();
  std::array<int, 2> pipe{};
  if (::pipe(pipe.data()) != 0) return "no pipe";
  const pid_t child = ::fork();
  if (child == 0) {
    constexpr unsigned kNobody = 65534;
    std::string said = "still privileged";
    if (::setgroups(0, nullptr) == 0 && ::setgid(kNobody) == 0 && ::setuid(kNobody) == 0) said = work();
    const bool told = ::write(pipe[1], said.data(), said.size()) == static_cast<::ssize_t>(said.size());
    ::_exit(told ? 0 : 1);
  }
  ::close(pipe[1]);
  std::string said(256, '\0');
  const ::ssize_t n = ::read(pipe[0], said.data(), said.size());
  ::close(pipe[0]);
  int status = 0;
  ::waitpid(child, &status, 0);
  said.resize(n > 0 ? static_cast<std::size_t>(n) : 0);
  return said;
}

TEST(Save, MakesANewFileByTheUmask) {
  const TempFolder f;
  const mode_t before = ::umask(027);
  const auto saved = save_file(f.path("a.snuglab"), "one");
  ::umask(before);
  ASSERT_TRUE(saved) << english(saved.error());
  EXPECT_FALSE(saved->previous_kept);
  EXPECT_EQ(bytes_of(f.path("a.snuglab")), "one");
  EXPECT_EQ(mode_of(f.path("a.snuglab")), 0640U);
  EXPECT_EQ(f.names(), std::vector<std::string>{"a.snuglab"});
}

TEST(Save, ReplacesAndKeepsPermissionBits) {
  const TempFolder f;
  for (const unsigned mode : {0600U, 0664U, 0755U}) {
    put_bytes(f.path("a"), "old old old");
    ::chmod(f.path("a").c_str(), mode);
    ASSERT_TRUE(save_file(f.path("a"), "new"));
    EXPECT_EQ(bytes_of(f.path("a")), "new");
    EXPECT_EQ(mode_of(f.path("a")), mode);
  }
  EXPECT_EQ(f.names(), std::vector<std::string>{"a"});
}

TEST(Save, EverySize) {
  const TempFolder f;
  for (const std::size_t size : {0U, 1U, 100U, 16'384U, 16'385U, 3'000'000U}) {
    const std::string bytes(size, 'x');
    ASSERT_TRUE(save_file(f.path("a"), bytes));
    EXPECT_EQ(bytes_of(f.path("a")), bytes) << size;
  }
}

TEST(Save, KeepsThePreviousVersion) {
  const TempFolder f;
  const SaveOptions keep{true, {}};
  EXPECT_FALSE(save_file(f.path("a"), "1", keep)->previous_kept);
  EXPECT_TRUE(save_file(f.path("a"), "2", keep)->previous_kept);
  EXPECT_TRUE(save_file(f.path("a"), "3", keep)->previous_kept);
  EXPECT_EQ(bytes_of(f.path("a")), "3");
  EXPECT_EQ(bytes_of(f.path("a~")), "2");
  EXPECT_EQ(f.names(), (std::vector<std::string>{"a", "a~"}));
  fs::create_directory(f.path("b~"));
  ASSERT_TRUE(save_file(f.path("b"), "1", keep));
  const auto saved = save_file(f.path("b"), "2", keep); // the name is taken by a folder: saved all the same
  ASSERT_TRUE(saved);
  EXPECT_FALSE(saved->previous_kept);
  EXPECT_EQ(bytes_of(f.path("b")), "2");
}

TEST(Save, FollowsSymbolicLinks) {
  const TempFolder f;
  fs::create_directory(f.path("deep"));
  put_bytes(f.path("deep/real"), "old");
  fs::create_symlink("deep/real", f.path("one"));
  fs::create_symlink(f.path("one"), f.path("two"));
  ASSERT_TRUE(save_file(f.path("two"), "new"));
  EXPECT_EQ(bytes_of(f.path("deep/real")), "new");
  EXPECT_TRUE(fs::is_symlink(f.path("one")));
  EXPECT_TRUE(fs::is_symlink(f.path("two")));
  fs::create_symlink("deep/later", f.path("dangling"));
  ASSERT_TRUE(save_file(f.path("dangling"), "new"));
  EXPECT_EQ(bytes_of(f.path("deep/later")), "new");
  fs::create_symlink("round", f.path("round"));
  EXPECT_EQ(complaint(f.path("round")), "save-links");
}

TEST(Save, RefusesWhatIsNoFile) {
  const TempFolder f;
  fs::create_directory(f.path("folder"));
  ASSERT_EQ(::mkfifo(f.path("pipe").c_str(), 0600), 0);
  EXPECT_EQ(complaint(f.path("folder")), "file-folder");
  EXPECT_EQ(complaint(f.path("folder/")), "file-folder");
  EXPECT_EQ(complaint(f.path("pipe")), "file-special");
  EXPECT_EQ(complaint("/dev/null"), "file-special");
  EXPECT_EQ(complaint(f.path("missing/a")), "save-no-folder");
  EXPECT_EQ(complaint(f.path("pipe/a")), "save-no-folder");
  EXPECT_EQ(complaint(""), "save-name-empty");
  EXPECT_EQ(complaint(f.path(std::string(300, 'n'))), "save-failed");
  EXPECT_EQ(f.names(), (std::vector<std::string>{"folder", "pipe"}));
}

TEST(Save, RefusesWithoutPermission) {
  const TempFolder f;
  put_bytes(f.path("read-only"), "old");
  ::chmod(f.path("read-only").c_str(), 0444);
  fs::create_directory(f.path("closed"));
  put_bytes(f.path("closed/a"), "old");
  ::chmod(f.path("closed/a").c_str(), 0666);
  ::chmod(f.path("closed").c_str(), 0555);
  fs::create_directory(f.path("hidden"));
  ::chmod(f.path("hidden").c_str(), 0000);
  EXPECT_EQ(as_nobody([&] { return complaint(f.path("read-only")); }), "save-read-only");
  EXPECT_EQ(as_nobody([&] { return complaint(f.path("closed/new")); }), "save-folder-denied");
  EXPECT_EQ(as_nobody([&] { return complaint(f.path("closed/a")); }), "save-folder-denied");
  EXPECT_EQ(as_nobody([&] { return complaint(f.path("hidden/a")); }), "save-folder-denied");
  EXPECT_EQ(bytes_of(f.path("read-only")), "old");
  EXPECT_EQ(bytes_of(f.path("closed/a")), "old");
  ::chmod(f.path("closed").c_str(), 0755);
  ::chmod(f.path("hidden").c_str(), 0755);
}

TEST(Save, TakesAwayWhatAKilledProcessLeft) {
  const TempFolder f;
  put_bytes(f.path("a"), "old");
  put_bytes(f.path(".a.saving"), "of a process that was killed");
  ASSERT_TRUE(save_file(f.path("a"), "new"));
  EXPECT_EQ(bytes_of(f.path("a")), "new");
  EXPECT_EQ(f.names(), std::vector<std::string>{"a"});
}

TEST(Save, LongNames) {
  const TempFolder f;
  const std::string name(255, 'n'); // NAME_MAX
  ASSERT_TRUE(save_file(f.path(name), "1"));
  const auto saved = save_file(f.path(name), "2", {true, {}});
  ASSERT_TRUE(saved) << english(saved.error());
  EXPECT_FALSE(saved->previous_kept); // one octet more than a name may have
  EXPECT_EQ(bytes_of(f.path(name)), "2");
}

TEST(Save, SeveralAtOnceEachLeaveAWholeFile) {
  const TempFolder f;
  std::vector<std::thread> writers;
  std::atomic<int> failed = 0;
  for (char c = 'a'; c < 'e'; ++c)
    writers.emplace_back([&, c] {
      for (int i = 0; i < 50; ++i)
        if (!save_file(f.path("shared"), std::string(50'000, c))) ++failed;
    });
  for (std::thread& w : writers) w.join();
  EXPECT_EQ(failed, 0);
  const std::string bytes = bytes_of(f.path("shared"));
  ASSERT_EQ(bytes.size(), 50'000U);
  EXPECT_EQ(bytes.find_first_not_of(bytes[0]), std::string::npos);
  EXPECT_EQ(f.names(), std::vector<std::string>{"shared"});
}

// RELIABILITY row 9 of the design: 100 changes from outside, in place and by rename, are each noticed.
TEST(Save, DoesNotOverwriteWhatAnotherProgramWrote) {
  const TempFolder f;
  const std::string file = f.path("a");
  for (int i = 0; i < 100; ++i) {
    put_bytes(file, "loaded " + std::to_string(i));
    const SaveOptions options{false, content_hash(bytes_of(file))};
    const std::string other = "changed " + std::to_string(i);
    put_bytes(i % 2 == 0 ? file : f.path("b"), other);
    if (i % 2 != 0) fs::rename(f.path("b"), file);
    const auto saved = save_file(file, "mine", options);
    ASSERT_FALSE(saved);
    EXPECT_EQ(saved.error().message.id(), "save-changed");
    EXPECT_EQ(bytes_of(file), other);
    EXPECT_TRUE(save_file(file, "mine", {false, content_hash(other)}));
    EXPECT_EQ(bytes_of(file), "mine");
  }
  fs::remove(file);
  EXPECT_TRUE(save_file(file, "mine", {false, 1}));
}

std::string read_complaint(const std::string& path) {
  const auto loaded = load_file(path);
  return loaded ? "loaded" : std::string(loaded.error().message.id());
}

TEST(ReadFile, RefusesWhatIsNoFileWithoutWaiting) {
  const TempFolder f;
  fs::create_directory(f.path("folder"));
  ASSERT_EQ(::mkfifo(f.path("pipe").c_str(), 0666), 0);
  EXPECT_EQ(read_complaint(f.path("folder")), "file-folder");
  EXPECT_EQ(read_complaint(f.path("pipe")), "file-special");
  EXPECT_EQ(read_complaint("/dev/zero"), "file-special");
  EXPECT_EQ(read_complaint(f.path("missing")), "file-missing");
  EXPECT_EQ(read_complaint(f.path("missing/a")), "file-missing");
  put_bytes(f.path("secret"), "{}");
  ::chmod(f.path("secret").c_str(), 0000);
  EXPECT_EQ(as_nobody([&] { return read_complaint(f.path("secret")); }), "file-denied");
  fs::create_symlink("round", f.path("round"));
  EXPECT_EQ(read_complaint(f.path("round")), "file-read");
}

TEST(ReadFile, HashTellsAnotherContent) {
  const TempFolder f;
  put_bytes(f.path("a"), R"({"format": "snuglab", "version": 1})");
  const auto loaded = load_file(f.path("a"));
  ASSERT_TRUE(loaded);
  EXPECT_EQ(content_hash(*read_file(f.path("a"))), loaded->content_hash);
  put_bytes(f.path("a"), R"({"format": "snuglab", "version": 1} )");
  EXPECT_NE(content_hash(*read_file(f.path("a"))), loaded->content_hash);
}

} // namespace
} // namespace snug
