// The checked save routine under faults (RELIABILITY 1 and rows 1 to 4 of the design).

#include "core/document/lock.h"
#include "core/document/save.h"
#include "tests/support/process.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"
#include "tests/support/temp_folder.h"

#include <csignal>
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace snug {
namespace {

using test::bytes_of;
using test::put_bytes;
using test::run_program;
using test::TempFolder;

constexpr std::array<std::size_t, 5> kSizes{100, 1'000, 16'384, 16'385, 100'000};
const std::string kLoop = SNUG_SAVE_LOOP;

bool is_whole(const std::string& bytes, std::size_t size) {
  return bytes.size() == size && bytes.find_first_not_of(bytes[0]) == std::string::npos;
}

pid_t start(const std::vector<std::string>& words) {
  std::vector<std::string> copy = words;
  std::vector<char*> argv;
  argv.reserve(copy.size() + 1);
  for (std::string& w : copy) argv.push_back(w.data());
  argv.push_back(nullptr);
  const pid_t child = ::fork();
  if (child == 0) {
    ::execv(argv[0], argv.data());
    ::_exit(127);
  }
  return child;
}

// Row 1: kill -9 at random moments. The file is whole, old or new; what is left over goes with the next save.
TEST(SaveFaults, KilledAtRandomMoments) {
  const TempFolder f;
  const std::string file = f.path("lab.snuglab");
  constexpr std::size_t kSize = 200'000;
  const int kills = test::scaled(1000);
  test::Random r(1);
  int left_over = 0, seen_new = 0;
  put_bytes(file, std::string(kSize, 'o'));
  for (int i = 0; i < kills; ++i) {
    const pid_t child = start({kLoop, file, std::to_string(kSize), "0", "keep"});
    ASSERT_GT(child, 0);
    std::this_thread::sleep_for(std::chrono::microseconds(r.between(5'000, 60'000)));
    ASSERT_EQ(::kill(child, SIGKILL), 0);
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    ASSERT_TRUE(WIFSIGNALED(status)) << "it ended by itself";
    const std::string bytes = bytes_of(file);
    ASSERT_TRUE(is_whole(bytes, kSize)) << "torn after kill " << i;
    seen_new += bytes[0] != 'o';
    for (const std::string& name : f.names()) {
      if (name == "lab.snuglab") continue;
      left_over += name != "lab.snuglab~";
      ASSERT_TRUE(is_whole(bytes_of(f.path(name)), kSize)) << name;
    }
  }
  EXPECT_GT(seen_new, 0);
  ASSERT_TRUE(save_file(file, "last"));
  EXPECT_EQ(bytes_of(file), "last");
  for (const std::string& name : f.names())
    EXPECT_TRUE(name == "lab.snuglab" || name == "lab.snuglab~") << name;
  RecordProperty("files_left_until_the_next_save", left_over);
}

// Row 3, first way: a limit for the size of files.
TEST(SaveFaults, FileSizeLimit) {
  for (const std::size_t size : kSizes) {
    const TempFolder f;
    put_bytes(f.path("a"), "old");
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
      std::signal(SIGXFSZ, SIG_IGN);
      const rlimit limit{size - 1, size - 1};
      const bool limited = ::setrlimit(RLIMIT_FSIZE, &limit) == 0;
      const auto saved = save_file(f.path("a"), std::string(size, 'x'));
      ::_exit(limited && !saved && saved.error().message.id() == "save-too-large" ? 0 : 1);
    }
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    EXPECT_EQ(status, 0) << size;
    EXPECT_EQ(bytes_of(f.path("a")), "old");
    EXPECT_EQ(f.names(), std::vector<std::string>{"a"});
  }
}

// Row 3, second way: a small file system. The later save succeeds once there is room.
TEST(SaveFaults, FullDisk) {
  const TempFolder f;
  const std::string disk = f.path("disk");
  std::filesystem::create_directory(disk);
  if (::mount("none", disk.c_str(), "tmpfs", 0, "size=64k") != 0)
    GTEST_SKIP() << "skipped: not in CI's sandbox: only root may mount a small file system";
  const std::string file = disk + "/lab.snuglab";
  const bool prepared = save_file(file, "old").has_value();
  const std::string filler(40'000, 'f');
  put_bytes(disk + "/filler", filler);
  const auto full = save_file(file, std::string(60'000, 'x'), {true, {}});
  const std::string after = bytes_of(file);
  const auto names = [&disk] {
    int n = 0;
    for ([[maybe_unused]] const auto& e : std::filesystem::directory_iterator(disk)) ++n;
    return n;
  };
  const int files = names();
  std::filesystem::remove(disk + "/filler");
  const auto later = save_file(file, std::string(50'000, 'x'));
  const std::string at_last = bytes_of(file);
  ASSERT_EQ(::umount(disk.c_str()), 0);
  EXPECT_TRUE(prepared);
  ASSERT_FALSE(full);
  EXPECT_EQ(full.error().message.id(), "save-full");
  EXPECT_EQ(after, "old");
  EXPECT_EQ(files, 2);
  EXPECT_TRUE(later);
  EXPECT_EQ(at_last, std::string(50'000, 'x'));
}

std::string found(const char* program) {
  const auto ran = run_program({"/bin/sh", "-c", "command -v " + std::string(program)});
  return ran.code == 0 ? ran.out.substr(0, ran.out.find('\n')) : "";
}

// Rows 3 (third way) and 4: one call after the other fails, once, and all of them from then on.
TEST(SaveFaults, FailingCalls) {
  const std::string fiu = found("fiu-run");
  if (fiu.empty()) GTEST_SKIP() << "skipped: fiu-run is not installed";
  struct Point {
    const char* name;
    int error;
  };
  constexpr std::array<Point, 6> kPoints{{{"posix/io/rw/write", ENOSPC},
                                          {"posix/io/rw/write", EIO},
                                          {"posix/io/sync/fsync", EIO},
                                          {"posix/io/dir/rename", EIO},
                                          {"posix/io/dir/link", EIO},
                                          {"posix/io/oc/open", EACCES}}};
  for (const Point& point : kPoints)
    for (const std::size_t size : kSizes) {
      const TempFolder f;
      put_bytes(f.path("a"), "old");
      const std::string enable =
          "enable name=" + std::string(point.name) + ",failinfo=" + std::to_string(point.error);
      const auto ran = run_program({fiu, "-x", "-c", enable, kLoop, f.path("a"), std::to_string(size), "1"});
      const std::string bytes = bytes_of(f.path("a"));
      if (ran.code == 0) { // calls that the library does not catch (renameat, linkat, openat) do their work
        EXPECT_TRUE(is_whole(bytes, size)) << point.name;
      } else {
        EXPECT_EQ(ran.code, 4) << point.name << ran.err;
        EXPECT_NE(ran.err.find(f.path("a")), std::string::npos) << ran.err;
        EXPECT_TRUE(bytes == "old") << point.name;
      }
      EXPECT_EQ(f.names(), std::vector<std::string>{"a"}) << point.name;
    }
  const TempFolder f;
  const auto ran = run_program(
      {fiu, "-x", "-c", "enable name=posix/io/rw/write,failinfo=28", kLoop, f.path("a"), "100", "1"});
  EXPECT_EQ(ran.code, 4) << "no write failed: the library did not take effect";
  EXPECT_NE(ran.err.find("the disk is full"), std::string::npos) << ran.err;
}

// strace makes the Nth call of each kind fail, which catches the *at calls too.
TEST(SaveFaults, EveryCallFailsOnce) {
  const std::string strace = found("strace");
  if (strace.empty() || run_program({strace, "-o", "/dev/null", "/bin/true"}).code != 0)
    GTEST_SKIP() << "skipped: not in CI's sandbox: strace may not trace here";
  constexpr std::array<const char*, 6> kCalls{"write", "fsync", "linkat", "renameat", "fchmod", "openat"};
  for (const char* call : kCalls) {
    bool clean = false;
    int refused = 0;
    for (int n = 1; n <= 60 && !clean; ++n) {
      const TempFolder f;
      put_bytes(f.path("a"), "old");
      const std::string inject = "inject=" + std::string(call) + ":error=EIO:when=" + std::to_string(n);
      const auto ran = run_program({strace, "-f", "-o", f.path("trace"), "-e", "trace=" + std::string(call),
                                    "-e", inject, kLoop, f.path("a"), "20000", "1"});
      const std::string trace = bytes_of(f.path("trace"));
      std::filesystem::remove(f.path("trace"));
      clean = trace.find("INJECTED") == std::string::npos;
      if (ran.code == 127) continue; // a shared library could not be opened
      const std::string bytes = bytes_of(f.path("a"));
      ASSERT_TRUE(bytes == "old" || is_whole(bytes, 20'000)) << call << " " << n;
      refused += ran.code == 4;
      const bool unconfirmed = ran.err.find("is written, but") != std::string::npos;
      const bool should_be_new = ran.code == 0 || unconfirmed;
      ASSERT_EQ(bytes != "old", should_be_new) << call << " " << n << " " << ran.err;
      ASSERT_EQ(f.names(), std::vector<std::string>{"a"}) << call << " " << n;
    }
    EXPECT_TRUE(clean) << call;
    // Where linking fails, a file with a name is tried.
    EXPECT_TRUE(refused > 0 || call == std::string_view("linkat")) << call;
  }
}

// Row 2: everything is on the disk before the name changes, and the folder after it.
TEST(SaveFaults, OrderOfCalls) {
  const std::string strace = found("strace");
  if (strace.empty() || run_program({strace, "-o", "/dev/null", "/bin/true"}).code != 0)
    GTEST_SKIP() << "skipped: not in CI's sandbox: strace may not trace here";
  const TempFolder f;
  const std::string trace_file = f.path("trace");
  for (const bool exists : {false, true}) {
    const auto ran = run_program({strace, "-o", trace_file, "-y", "-e",
                                  "trace=write,fsync,fdatasync,linkat,rename,renameat,renameat2", kLoop,
                                  f.path("a"), "100000", "1"});
    ASSERT_EQ(ran.code, 0) << ran.err;
    const std::string trace = bytes_of(trace_file);
    const std::size_t written = trace.rfind("write(");
    const std::size_t synced = trace.find("fsync(");
    const std::size_t named = trace.find(exists ? "renameat" : "linkat(");
    const std::size_t folder = trace.rfind("fsync(");
    ASSERT_NE(named, std::string::npos) << trace;
    EXPECT_LT(written, synced) << trace;
    EXPECT_LT(synced, named) << trace;
    EXPECT_LT(named, folder) << trace;
    EXPECT_NE(trace.substr(folder).find("<" + f.path() + ">"), std::string::npos) << trace;
  }
}

// Row 8: of two processes exactly one gets a file; a killed one gives it back.
TEST(LockFaults, RacesAndKilledHolders) {
  const TempFolder f;
  put_bytes(f.path("a"), "x");
  const int races = test::scaled(200);
  for (int i = 0; i < races; ++i) {
    std::array<int, 2> go{}, done{};
    ASSERT_EQ(::pipe(go.data()), 0);
    ASSERT_EQ(::pipe(done.data()), 0);
    std::array<pid_t, 2> children{};
    for (pid_t& child : children) {
      child = ::fork();
      if (child != 0) continue;
      ::close(go[1]);
      char c = 0;
      if (::read(go[0], &c, 1) != 0) ::_exit(2); // both start when the pipe is closed
      const auto lock = FileLock::take(f.path("a"));
      const char said = lock ? 'w' : lock.error().message.id() == "lock-held" ? 'h' : '?';
      if (::write(done[1], &said, 1) != 1) ::_exit(3);
      for (;;) ::pause(); // until killed, holding
    }
    ::close(go[0]);
    ::close(go[1]);
    std::string said(2, ' ');
    ASSERT_EQ(::read(done[0], said.data(), 1), 1);
    ASSERT_EQ(::read(done[0], said.data() + 1, 1), 1);
    for (const pid_t child : children) {
      ::kill(child, SIGKILL);
      ::waitpid(child, nullptr, 0);
    }
    ::close(done[0]);
    ::close(done[1]);
    EXPECT_TRUE(said == "wh" || said == "hw") << said;
  }
  const auto next = FileLock::take(f.path("a"));
  EXPECT_TRUE(next) << english(next.error());
}

} // namespace
} // namespace snug
