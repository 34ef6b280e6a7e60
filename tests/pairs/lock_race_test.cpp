// Two processes want to write one file, again and again: one of them does, and the other is told so.

#include "core/document/lock.h"

#include "core/document/read.h"
#include "core/document/save.h"
#include "tests/support/scale.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <array>
#include <atomic>
#include <functional>
#include <new>
#include <pthread.h>
#include <sched.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

namespace snug::test {
namespace {

constexpr unsigned kPatience = 120; // seconds; only a broken program takes that long

// Memory of both processes.
struct Table {
  Table() {
    pthread_barrierattr_t shared;
    pthread_barrierattr_init(&shared);
    pthread_barrierattr_setpshared(&shared, PTHREAD_PROCESS_SHARED);
    pthread_barrier_init(&barrier, &shared, 2);
    pthread_barrierattr_destroy(&shared);
  }
  void meet() { pthread_barrier_wait(&barrier); }
  pthread_barrier_t barrier{};
  std::atomic<int> holders{0}, inside{0}; // now
  std::atomic<int> rounds{0}, with_one{0}, told{0}, overlaps{0}, lost{0};
  std::array<std::atomic<int>, 2> won{};
};

class Race : public ::testing::Test {
 protected:
  Race()
      : table(*new (::mmap(nullptr, sizeof(Table), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0))
                  Table) {}
  void TearDown() override { ::munmap(&table, sizeof(Table)); }

  // Runs it in two processes and waits for both.
  static void in_two(const std::function<void(int)>& run) {
    std::array<pid_t, 2> children{};
    for (int who = 0; who < 2; ++who) {
      children[std::size_t(who)] = ::fork();
      if (children[std::size_t(who)] != 0) continue;
      ::alarm(kPatience);
      run(who);
      ::_exit(0);
    }
    for (const pid_t child : children) {
      int status = 0;
      ASSERT_EQ(::waitpid(child, &status, 0), child);
      EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << "ended by signal " << WTERMSIG(status);
    }
  }
  const TempFolder folder;
  const std::string file = folder.path("lab.snuglab");
  Table& table;
};

// Both ask at the same moment; who holds the lock writes.
TEST_F(Race, ExactlyOneOfTwoHoldsTheLock) {
  const int rounds = scaled(200);
  put_bytes(file, "nobody");
  in_two([&](int who) {
    for (int round = 0; round < rounds; ++round) {
      table.meet();
      const auto lock = FileLock::take(file);
      const std::string mine = std::to_string(round) + " by " + std::to_string(who);
      if (lock && lock->is_held()) {
        ++table.holders;
        ++table.won[std::size_t(who)];
        if (!save_file(file, mine)) ++table.lost;
      } else if (!lock && lock.error().message.id() == "lock-held") {
        ++table.told;
      }
      table.meet(); // both have asked, the winner still holds it
      if (lock && lock->is_held() && read_file(file).value_or("") != mine) ++table.lost;
      if (who == 0) {
        ++table.rounds;
        if (table.holders.exchange(0) == 1) ++table.with_one;
      }
    }
  });
  EXPECT_EQ(table.rounds, rounds);
  EXPECT_EQ(table.with_one, rounds) << "rounds with exactly one writer";
  EXPECT_EQ(table.told, rounds) << "the other one was told that somebody holds it";
  EXPECT_EQ(table.lost, 0) << "what the winner wrote is there";
  EXPECT_EQ(table.won[0] + table.won[1], rounds);
}

// Each takes its turn whenever the lock is free, also while the other one is just letting go of it.
TEST_F(Race, NoTurnOfTwoOverlapsAndNoneIsLost) {
  const int turns = scaled(200);
  put_bytes(file, "0");
  in_two([&](int who) {
    table.meet();
    while (table.won[std::size_t(who)] < turns) {
      const auto lock = FileLock::take(file);
      if (!lock || !lock->is_held()) {
        ::sched_yield();
        continue;
      }
      if (table.inside.exchange(1) != 0) ++table.overlaps;
      const int before = std::atoi(read_file(file).value_or("-1").c_str());
      if (!save_file(file, std::to_string(before + 1))) ++table.lost;
      ++table.won[std::size_t(who)];
      table.inside = 0;
    }
  });
  EXPECT_EQ(table.overlaps, 0);
  EXPECT_EQ(table.lost, 0);
  EXPECT_EQ(bytes_of(file), std::to_string(2 * turns)) << "every turn counted on from the one before";
}

} // namespace
} // namespace snug::test
