// The journal under faults (RELIABILITY rows 3, 4, 5 and 7 of the design).

#include "core/document/read.h"
#include "core/document/recovery.h"
#include "core/document/write.h"
#include "tests/support/journal_session.h"
#include "tests/support/process.h"
#include "tests/support/scale.h"
#include "tests/support/temp_folder.h"

#include <csignal>
#include <cstring>
#include <gtest/gtest.h>
#include <map>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace snug {
namespace {

using test::bytes_of;
using test::JournalSession;
using test::put_bytes;
using test::run_program;
using test::TempFolder;

const std::string kLoop = SNUG_JOURNAL_LOOP;

Lab first_lab() {
  test::Random r(21);
  return test::random_lab(r, 4);
}
const Lab& the_lab() {
  static const Lab lab = first_lab();
  return lab;
}

// What the program does with a seed, change by change, worked out here as far as it is needed.
class Course {
 public:
  Course(std::uint64_t seed, bool saves) : session_(seed, the_lab(), saves ? "a" : ""), labs_{the_lab()} {
    session_.changed = [this] { labs_.push_back(session_.lab); };
  }
  const Lab& after(std::uint64_t changes) {
    while (labs_.size() <= changes) session_.act(nullptr);
    return labs_[changes];
  }

 private:
  JournalSession session_;
  std::vector<Lab> labs_;
};

struct Place {
  TempFolder folder;
  std::string state = folder.path("state"), document = folder.path("a.snuglab"), acks = folder.path("acks");
  std::string bytes = write_lab(the_lab());

  Place() { put_bytes(document, bytes); }
  std::vector<std::string> words(std::uint64_t seed, int acts, std::string_view mode) const {
    return {kLoop, state, document, acks, std::to_string(seed), std::to_string(acts), std::string(mode)};
  }
  // Changes made and changes kept.
  std::pair<std::uint64_t, std::uint64_t> counts() const {
    std::array<std::uint64_t, 2> n{};
    const std::string b = bytes_of(acks);
    if (b.size() == sizeof n) std::memcpy(n.data(), b.data(), sizeof n);
    return {n[0], n[1]};
  }
  std::size_t strays() const {
    std::error_code none;
    std::size_t n = 0;
    for ([[maybe_unused]] const auto& e : std::filesystem::directory_iterator(state, none)) ++n;
    return n;
  }
};

void run_and_kill(const std::vector<std::string>& words, std::int64_t microseconds) {
  std::vector<std::string> copy = words;
  std::vector<char*> argv;
  argv.reserve(copy.size() + 1);
  for (std::string& w : copy) argv.push_back(w.data());
  argv.push_back(nullptr);
  const pid_t child = ::fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    ::execv(argv[0], argv.data());
    ::_exit(127);
  }
  std::this_thread::sleep_for(std::chrono::microseconds(microseconds));
  ASSERT_EQ(::kill(child, SIGKILL), 0);
  int status = 0;
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  ASSERT_TRUE(WIFSIGNALED(status)) << "it ended by itself with " << WEXITSTATUS(status);
}

// The lab of the last change that was kept, or the one after it, which was under way; then everything is
// taken away and nothing is left.
void check_recovered(const Place& p, Course& course, bool untouched) {
  const std::uint64_t kept = p.counts().second;
  std::optional<RecoveredJournal> recovered;
  Replayed back;
  ASSERT_NO_FATAL_FAILURE(test::take_back(p.state, recovered, back));
  if (!recovered) {
    ASSERT_EQ(kept, 0U);
    ASSERT_EQ(p.strays(), 0U);
    return;
  }
  ASSERT_TRUE(back.lab == course.after(kept) || back.lab == course.after(kept + 1)) << kept;
  if (untouched) {
    ASSERT_EQ(bytes_of(p.document), p.bytes);
  }
  ASSERT_TRUE(discard(std::move(*recovered)));
  recovered.reset();
  ASSERT_EQ(p.strays(), 0U);
}

// Row 7: kill -9 at random moments, half of the runs with saves; every fifth time again while recovering (row
// 5).
TEST(JournalFaults, KilledAtRandomMoments) {
  const int kills = test::scaled(1000);
  test::Random r(2);
  std::map<std::pair<std::uint64_t, bool>, Course> courses;
  std::uint64_t changes = 0;
  for (int i = 0; i < kills; ++i) {
    const Place p;
    const bool saves = i % 2 == 1;
    const auto seed = static_cast<std::uint64_t>(i % 8);
    ASSERT_NO_FATAL_FAILURE(
        run_and_kill(p.words(seed, 0, saves ? "save" : "edit"), r.between(2'000, 40'000)));
    if (i % 5 == 0) {
      ASSERT_NO_FATAL_FAILURE(run_and_kill(p.words(seed, 0, "recover"), r.between(2'000, 20'000)));
    }
    Course& course = courses.try_emplace({seed, saves}, seed, saves).first->second;
    changes += p.counts().second;
    ASSERT_NO_FATAL_FAILURE(check_recovered(p, course, !saves)) << "kill " << i;
  }
  EXPECT_GT(changes, static_cast<std::uint64_t>(kills)) << "killed too early to mean anything";
  RecordProperty("changes_kept", std::to_string(changes));
}

// Row 3, first way: a limit for the size of files. What waits goes into the file as soon as it may.
TEST(JournalFaults, FileSizeLimit) {
  const Place p;
  const pid_t child = ::fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit limit{};
    ::getrlimit(RLIMIT_FSIZE, &limit);
    auto journal = Journal::begin(p.state, test::head_of(the_lab(), p.document), {});
    if (!journal) ::_exit(2);
    const rlimit small{std::filesystem::file_size(journal->path()) + 1000, limit.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &small);
    JournalSession session(1, the_lab(), "");
    bool refused = false, right_words = true;
    for (int i = 0; i < 30; ++i) {
      if (session.act(&*journal, std::chrono::milliseconds(i))) continue;
      refused = true;
      right_words = right_words && session.problem->message.id() == "journal-not-kept";
    }
    if (!refused || !right_words || !journal->not_kept_since()) ::_exit(3);
    journal = fail(Problem{});
    auto recovered = recover(find_journals(p.state).at(0).path);
    if (!recovered || recovered->damage) ::_exit(4); // no half line stays
    const auto back = replay(*recovered);
    if (!back || back->stopped) ::_exit(5);
    ::setrlimit(RLIMIT_FSIZE, &limit);
    JournalSession other(1, the_lab(), "");
    recovered = fail(Problem{});
    std::filesystem::remove_all(p.state);
    journal = Journal::begin(p.state, test::head_of(the_lab(), p.document), {});
    ::setrlimit(RLIMIT_FSIZE, &small);
    for (int i = 0; i < 30; ++i) other.act(&*journal, {});
    if (!journal->not_kept_since()) ::_exit(6);
    ::setrlimit(RLIMIT_FSIZE, &limit);
    if (!journal->sync_if_due({}) || journal->not_kept_since()) ::_exit(7);
    journal = fail(Problem{});
    recovered = recover(find_journals(p.state).at(0).path);
    const auto all = recovered ? replay(*recovered) : Result<Replayed>(fail(Problem{}));
    ::_exit(all && all->lab == other.lab ? 0 : 8);
  }
  int status = 0;
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  EXPECT_EQ(WEXITSTATUS(status), 0);
  EXPECT_EQ(bytes_of(p.document), p.bytes);
}

// More waits than memory should hold: what came before stays in order, and saving begins anew.
TEST(JournalFaults, TooMuchWaits) {
  const Place p;
  const pid_t child = ::fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit limit{};
    ::getrlimit(RLIMIT_FSIZE, &limit);
    Lab lab = the_lab();
    History history;
    auto journal = Journal::begin(p.state, test::head_of(lab, p.document), {});
    if (!journal) ::_exit(2);
    const rlimit small{std::filesystem::file_size(journal->path()) + 1000, limit.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &small);
    const auto change = [&](char c) {
      const std::size_t most = info<LabFacts>().field("notes")->max_length;
      const Edit e = set_field(lab, AnyId{Kind::lab, 0}, "notes", std::string(most, c));
      if (!history.perform(lab, e)) ::_exit(3);
      return journal->edited(e, history.recorded(), {});
    };
    const std::size_t octets = 2 * info<LabFacts>().field("notes")->max_length;
    for (std::size_t n = 0; n <= Journal::kMostWaiting / octets + 2; ++n)
      if (change(n % 2 == 0 ? 'a' : 'b')) ::_exit(4);
    ::setrlimit(RLIMIT_FSIZE, &limit);
    const auto rest = journal->sync_if_due({});
    if (rest || english(rest.error()).find("begins anew when you save") == std::string::npos) ::_exit(5);
    if (!journal->not_kept_since()) ::_exit(6);
    put_bytes(p.document, write_lab(lab));
    history.mark_clean();
    if (!journal->saved(test::head_of(lab, p.document), {}) || journal->not_kept_since()) ::_exit(7);
    if (!change('c')) ::_exit(8);
    journal = fail(Problem{});
    const auto recovered = recover(find_journals(p.state).at(0).path);
    const auto back = recovered ? replay(*recovered) : Result<Replayed>(fail(Problem{}));
    ::_exit(back && back->lab == lab && back->again == 1 ? 0 : 9);
  }
  int status = 0;
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  EXPECT_EQ(WEXITSTATUS(status), 0);
}

// Row 3, second way: a small file system that is full for a while, and while the document is saved.
TEST(JournalFaults, FullDisk) {
  const Place p;
  std::filesystem::create_directory(p.state);
  if (::mount("none", p.state.c_str(), "tmpfs", 0, "size=64k") != 0)
    GTEST_SKIP() << "skipped: not in CI's sandbox: only root may mount a small file system";
  auto journal = Journal::begin(p.state, test::head_of(the_lab(), p.document), {});
  EXPECT_TRUE(journal);
  put_bytes(p.state + "/filler", std::string(64 * 1024, 'f'));
  JournalSession session(1, the_lab(), "");
  int refused = 0;
  for (int i = 0; i < 60; ++i) refused += !session.act(&*journal, {});
  const bool waits = journal->not_kept_since().has_value();
  const std::string words = session.problem ? english(*session.problem) : "";
  const auto anew = journal->saved(test::head_of(session.lab, p.document), {});
  std::filesystem::remove(p.state + "/filler");
  const bool kept = journal->sync_if_due({}).has_value();
  journal = fail(Problem{});
  const auto recovered = recover(find_journals(p.state).at(0).path);
  const auto back = recovered ? replay(*recovered) : Result<Replayed>(fail(Problem{}));
  const std::size_t files = p.strays();
  EXPECT_EQ(::umount2(p.state.c_str(), MNT_DETACH), 0);
  EXPECT_GT(refused, 0);
  EXPECT_TRUE(waits);
  EXPECT_NE(words.find("the disk is full"), std::string::npos) << words;
  ASSERT_FALSE(anew);
  EXPECT_EQ(anew.error().message.id(), "journal-goes-on");
  EXPECT_TRUE(kept);
  ASSERT_TRUE(back);
  EXPECT_TRUE(back->lab == session.lab);
  EXPECT_EQ(files, 2U) << "the journal and its lock";
}

std::string found(const char* program) {
  const auto ran = run_program({"/bin/sh", "-c", "command -v " + std::string(program)});
  return ran.code == 0 ? ran.out.substr(0, ran.out.find('\n')) : "";
}

// After a run with faults: either no journal could be begun and nothing is there, or the changes that were
// said to be kept are.
void check_after_faults(const Place& p, Course& course, int code, const std::string& what) {
  ASSERT_TRUE(code == 0 || code == 4) << what << " " << code;
  ASSERT_EQ(bytes_of(p.document), p.bytes) << what;
  if (code == 0) {
    ASSERT_EQ(find_journals(p.state).size(), 1U) << what;
  }
  ASSERT_NO_FATAL_FAILURE(check_recovered(p, course, true)) << what;
}

// Row 3, third way, and row 4: calls that fail now and then.
TEST(JournalFaults, FailingCalls) {
  const std::string fiu = found("fiu-run");
  if (fiu.empty()) GTEST_SKIP() << "skipped: fiu-run is not installed";
  Course course(4, false);
  int refused = 0;
  for (const auto& [point, error] : {std::pair{"posix/io/rw/write", ENOSPC},
                                     {"posix/io/rw/write", EIO},
                                     {"posix/io/sync/fsync", EIO},
                                     {"posix/io/dir/rename", EIO}})
    for (int i = 0; i < test::scaled(40); ++i) {
      const Place p;
      const std::string enable =
          "enable_random name=" + std::string(point) + ",probability=0.2,failinfo=" + std::to_string(error);
      const auto ran = [&] {
        std::vector<std::string> words{fiu, "-x", "-c", enable};
        for (std::string& w : p.words(4, 60, "edit")) words.push_back(std::move(w));
        return run_program(words);
      }();
      refused += !ran.err.empty();
      ASSERT_NO_FATAL_FAILURE(check_after_faults(p, course, ran.code, point));
    }
  EXPECT_GT(refused, 0) << "no call failed: the library did not take effect";
}

// strace makes the Nth call of each kind fail, until a run passes clean.
TEST(JournalFaults, EveryCallFailsOnce) {
  const std::string strace = found("strace");
  if (strace.empty() || run_program({strace, "-o", "/dev/null", "/bin/true"}).code != 0)
    GTEST_SKIP() << "skipped: not in CI's sandbox: strace may not trace here";
  Course course(4, false);
  constexpr int kActs = 12;
  for (const char* call : {"write", "fsync", "ftruncate", "linkat", "renameat", "openat", "fstat"}) {
    bool clean = false;
    int refused = 0;
    for (int n = 1; n <= 80 && !clean; ++n) {
      const Place p;
      const std::string what = std::string(call) + " " + std::to_string(n);
      const std::string trace = p.folder.path("trace");
      std::vector<std::string> words{
          strace, "-f",
          "-o",   trace,
          "-e",   "trace=" + std::string(call),
          "-e",   "inject=" + std::string(call) + ":error=EIO:when=" + std::to_string(n)};
      for (std::string& w : p.words(4, kActs, "edit")) words.push_back(std::move(w));
      const auto ran = run_program(words);
      clean = bytes_of(trace).find("INJECTED") == std::string::npos;
      if (ran.code == 127 || ran.code == 2) continue; // a shared library or the document could not be opened
      refused += !ran.err.empty();
      ASSERT_NO_FATAL_FAILURE(check_after_faults(p, course, ran.code, what)) << ran.err;
      const auto [made, kept] = p.counts();
      ASSERT_TRUE(ran.code == 4 || kept + 4 >= made) << what << ": one fault, but many changes wait";
    }
    EXPECT_TRUE(clean) << call;
    EXPECT_TRUE(refused > 0 || std::string_view(call) != "write");
  }
}

// DECISIONS 29 of the design: a line is one write; the disk is made to follow at most every 5 seconds.
TEST(JournalFaults, OneWriteALineAndFewSyncs) {
  const std::string strace = found("strace");
  if (strace.empty() || run_program({strace, "-o", "/dev/null", "/bin/true"}).code != 0)
    GTEST_SKIP() << "skipped: not in CI's sandbox: strace may not trace here";
  const Place p;
  const std::string trace_file = p.folder.path("trace");
  std::vector<std::string> words{strace, "-o", trace_file, "-e", "trace=write,fsync,fdatasync"};
  constexpr int kActs = 149; // of 100 ms each: after 5 s and after 10 s
  for (std::string& w : p.words(4, kActs, "edit")) words.push_back(std::move(w));
  ASSERT_EQ(run_program(words).code, 0);
  const std::string trace = bytes_of(trace_file);
  const auto count = [&trace](std::string_view word) {
    std::size_t n = 0;
    for (std::size_t at = trace.find(word); at != std::string::npos; at = trace.find(word, at + 1)) ++n;
    return n;
  };
  const std::uint64_t lines = p.counts().first + 1;
  EXPECT_EQ(count("write("), lines);
  EXPECT_EQ(count("sync("), 2U + 2U) << "the new file and its folder; twice later";
}

// What could not be forced to the disk may be gone from the system's memory as well, and a second fsync would
// not say so: the whole journal is written anew.
TEST(JournalFaults, AfterAFailedSyncItIsWrittenAnew) {
  const std::string strace = found("strace");
  if (strace.empty() || run_program({strace, "-o", "/dev/null", "/bin/true"}).code != 0)
    GTEST_SKIP() << "skipped: not in CI's sandbox: strace may not trace here";
  const Place p;
  const std::string trace_file = p.folder.path("trace");
  std::vector<std::string> words{
      strace, "-o", trace_file, "-e", "trace=fsync,renameat", "-e", "inject=fsync:error=EIO:when=3"};
  for (std::string& w : p.words(4, 149, "edit")) words.push_back(std::move(w));
  const auto ran = run_program(words);
  ASSERT_EQ(ran.code, 0);
  EXPECT_NE(ran.err.find("did not confirm"), std::string::npos) << ran.err;
  const std::string trace = bytes_of(trace_file);
  const std::size_t failed = trace.find("INJECTED");
  ASSERT_NE(failed, std::string::npos) << trace;
  EXPECT_NE(trace.find("renameat", failed), std::string::npos) << trace;
  Course course(4, false);
  check_recovered(p, course, true);
}

} // namespace
} // namespace snug
