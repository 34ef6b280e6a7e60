// The real window killed at random moments (RELIABILITY row 7 of the design; DECISIONS 28: 50 times).

#include "core/document/read.h"
#include "core/document/recovery.h"
#include "core/document/write.h"
#include "tests/support/journal_session.h"
#include "tests/support/sample.h"
#include "tests/support/temp_folder.h"

#include <csignal>
#include <cstring>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace snug {
namespace {

using test::bytes_of;
using test::put_bytes;
using test::TempFolder;
using namespace std::chrono_literals;

struct Acks {
  std::uint64_t changes = 0, hash[2] = {0, 0};
  std::uint64_t last() const { return hash[changes % 2]; }
};

struct Place {
  TempFolder folder;
  std::string state = folder.path("state"), document = folder.path("a.snuglab"), acks = folder.path("acks");
  std::uint64_t first = 0; // hash of the lab

  Place() {
    const std::string bytes = write_lab(test::sample("skerry-ferries"));
    first = content_hash(bytes);
    put_bytes(document, bytes);
  }
  Acks read_acks() const {
    Acks a;
    const std::string b = std::filesystem::exists(acks) ? bytes_of(acks) : std::string();
    if (b.size() == sizeof a) std::memcpy(&a, b.data(), sizeof a);
    return a;
  }
  std::size_t strays() const {
    std::error_code none;
    std::size_t n = 0;
    for ([[maybe_unused]] const auto& e : std::filesystem::directory_iterator(state, none)) ++n;
    return n;
  }
};

// Starts the window, waits for a random number of changes (unless `early`) and a random while, and kills it.
void run_and_kill(const Place& p, std::uint64_t seed, const char* mode, bool early) {
  std::vector<std::string> words{SNUG_WINDOW_LOOP, p.state, p.document, p.acks, std::to_string(seed), mode};
  std::vector<char*> argv;
  for (std::string& w : words) argv.push_back(w.data());
  argv.push_back(nullptr);
  const std::uint64_t before = p.read_acks().changes;
  const pid_t child = ::fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    ::setenv("QT_QPA_PLATFORM", "offscreen", 1);
    ::execv(argv[0], argv.data());
    ::_exit(127);
  }
  test::Random random(seed);
  int status = 0;
  const std::uint64_t enough = before + 1 + random.below(30);
  for (int i = 0; !early && i < 30'000 && p.read_acks().changes < enough; ++i) {
    std::this_thread::sleep_for(1ms);
    ASSERT_EQ(::waitpid(child, &status, WNOHANG), 0) << "it ended by itself: " << status;
  }
  std::this_thread::sleep_for(std::chrono::microseconds(random.between(0, early ? 500'000 : 60'000)));
  ASSERT_EQ(::kill(child, SIGKILL), 0);
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  ASSERT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL) << "it ended by itself: " << status;
}

// The lab of the last change that the window told of, or the one after it, which was under way.
void check_recovered(const Place& p, std::uint64_t& steps) {
  const Acks acks = p.read_acks();
  const std::uint64_t last = acks.changes == 0 ? p.first : acks.last();
  std::optional<RecoveredJournal> recovered;
  Replayed back;
  ASSERT_NO_FATAL_FAILURE(test::take_back(p.state, recovered, back));
  if (!recovered) { // it was killed before the first step
    ASSERT_EQ(last, p.first);
    ASSERT_EQ(p.strays(), 0U);
    return;
  }
  steps += back.used;
  if (content_hash(write_lab(back.lab)) != last) {
    recovered->steps.pop_back();
    const auto without = replay(*recovered);
    ASSERT_TRUE(without) << english(without.error());
    ASSERT_EQ(content_hash(write_lab(without->lab)), last) << "after " << acks.changes << " changes";
  }
  ASSERT_TRUE(load_file(p.document)) << "the document is whole, as it was or as it was saved";
  ASSERT_TRUE(discard(std::move(*recovered)));
  recovered.reset();
  ASSERT_EQ(p.strays(), 0U);
}

TEST(WindowFaults, KilledFiftyTimes) {
  constexpr int kKills = 50;
  std::uint64_t steps = 0, changes = 0;
  for (int i = 0; i < kKills; ++i) {
    const Place p;
    const auto seed = static_cast<std::uint64_t>(i) + 1;
    ASSERT_NO_FATAL_FAILURE(run_and_kill(p, seed, "open", i % 10 == 9)) << "kill " << i;
    const auto left = find_journals(p.state);
    // Every fifth time again while it recovers and goes on (row 5).
    if (i % 5 == 0 && !left.empty() && replay(*recover(left[0].path))->again > 0) {
      ASSERT_NO_FATAL_FAILURE(run_and_kill(p, seed + 1000, "recover", i % 10 == 5)) << "kill " << i;
    }
    changes += p.read_acks().changes;
    ASSERT_NO_FATAL_FAILURE(check_recovered(p, steps)) << "kill " << i;
  }
  RecordProperty("changes", std::to_string(changes));
  EXPECT_GT(changes, static_cast<std::uint64_t>(kKills) * 5) << "killed too early to mean anything";
  EXPECT_GT(steps, static_cast<std::uint64_t>(kKills) * 3);
}

} // namespace
} // namespace snug
