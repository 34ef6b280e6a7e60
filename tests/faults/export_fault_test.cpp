// Full disks under exports of the command line (RELIABILITY row 3 of the design): the old file stays, a
// sentence names the new one, the exit code is "cannot write".

#include "tests/support/process.h"
#include "tests/support/temp_folder.h"

#include <algorithm>
#include <array>
#include <gtest/gtest.h>
#include <sys/mount.h>

namespace snug {
namespace {

using test::bytes_of;
using test::put_bytes;
using test::run_program;
using test::TempFolder;

const std::string kLab = std::string(SNUG_SOURCE_DIR) + "/samples/sixty.snuglab";

struct Export {
  const char* ending;
  const char* command;
};
constexpr std::array<Export, 9> kExports{{{"svg", "draw"},
                                          {"png", "draw"},
                                          {"pdf", "draw"},
                                          {"csv", "table"},
                                          {"md", "table"},
                                          {"html", "table"},
                                          {"json", "table"},
                                          {"txt", "check"},
                                          {"list", "changes"}}};

std::vector<std::string> words_of(const Export& e, const std::string& file) {
  std::vector<std::string> words{SNUG_CLI, e.command, kLab};
  if (e.command == std::string("changes"))
    words.push_back(std::string(SNUG_SOURCE_DIR) + "/samples/mistakes.snuglab");
  words.insert(words.end(), {"-o", file});
  return words;
}

void expect_refused(const test::Ran& ran, const std::string& file, const char* why) {
  EXPECT_EQ(ran.code, 4) << file << ran.err;
  EXPECT_EQ(ran.out, "");
  EXPECT_EQ(ran.err.rfind("snuglab-cli: " + file + ": ", 0), 0U) << ran.err;
  EXPECT_NE(ran.err.find(why), std::string::npos) << ran.err;
  EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << ran.err;
  EXPECT_EQ(bytes_of(file), "old") << file;
}

TEST(ExportFaults, FilesMayNotGrow) {
  for (const Export& e : kExports) {
    const TempFolder f;
    const std::string name = std::string("lab.") + e.ending, file = f.path(name);
    put_bytes(file, "old");
    std::vector<std::string> words{"/bin/sh", "-c", "ulimit -f 1; exec \"$@\"", "sh"};
    const auto command = words_of(e, file);
    words.insert(words.end(), command.begin(), command.end());
    expect_refused(run_program(words), file, "does not allow a file of this size here: save elsewhere");
    EXPECT_EQ(f.names(), std::vector<std::string>{name});
  }
}

TEST(ExportFaults, FullDisk) {
  const TempFolder f;
  const std::string disk = f.path("disk");
  std::filesystem::create_directory(disk);
  if (::mount("none", disk.c_str(), "tmpfs", 0, "size=64k") != 0)
    GTEST_SKIP() << "skipped: not in CI's sandbox: only root may mount a small file system";
  for (const Export& e : kExports) put_bytes(disk + "/lab." + e.ending, "old");
  put_bytes(disk + "/filler", std::string(28'000, 'f')); // nine files and this: all of the 16 pages
  for (const Export& e : kExports) {
    const std::string file = disk + "/lab." + e.ending;
    expect_refused(run_program(words_of(e, file)), file, "the disk is full: make room or save elsewhere");
  }
  const auto files = std::distance(std::filesystem::directory_iterator(disk), {});
  std::filesystem::remove(disk + "/filler");
  const auto saved = run_program(words_of(kExports[3], disk + "/lab.csv"));
  const std::string csv = bytes_of(disk + "/lab.csv");
  ASSERT_EQ(::umount(disk.c_str()), 0);
  EXPECT_EQ(files, static_cast<std::ptrdiff_t>(kExports.size() + 1));
  EXPECT_EQ(saved.code, 0) << saved.err;
  EXPECT_EQ(csv.rfind("Machine,", 0), 0U);
}

} // namespace
} // namespace snug
