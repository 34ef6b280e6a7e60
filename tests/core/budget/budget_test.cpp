#include "core/budget/budget.h"

#include "tests/bench/naive_budget.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"
#include "tests/support/ship_lab.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Random;
using test::Ship;

void expect_equal(const Lab& lab, const ExerciseBudgets& ours, const test::NaiveBudgets& naive) {
  for (std::size_t m = 0; m < lab.machines.size(); ++m)
    EXPECT_EQ(ours.running[m] != 0, naive.running.at(to_text(lab.machines[m].id)));
  ASSERT_EQ(ours.memory.size(), naive.memory.size());
  for (const MemoryBudget& b : ours.memory) {
    const test::NaiveMemory& n = naive.memory.at(to_text(b.of));
    EXPECT_EQ(b.budget, n.budget) << to_text(b.of);
    EXPECT_EQ(b.taken, n.taken) << to_text(b.of);
    EXPECT_EQ(b.expected, n.expected) << to_text(b.of);
  }
  ASSERT_EQ(ours.processors.size(), naive.processors.size());
  for (const ProcessorBudget& b : ours.processors) {
    const test::NaiveProcessors& n = naive.processors.at(to_text(b.of));
    EXPECT_EQ(b.running, n.running) << to_text(b.of);
    EXPECT_EQ(b.power, n.power) << to_text(b.of);
    EXPECT_EQ(b.ratio, n.ratio) << to_text(b.of);
    EXPECT_EQ(b.product, n.product) << to_text(b.of);
  }
  ASSERT_EQ(ours.disks.size(), naive.disks.size());
  for (const DiskBudget& b : ours.disks) {
    const test::NaiveDisk& n = naive.disks.at(to_text(b.of));
    EXPECT_EQ(b.budget, n.budget) << to_text(b.of);
    EXPECT_EQ(b.expected, n.expected) << to_text(b.of);
    EXPECT_EQ(b.worst, n.worst) << to_text(b.of);
  }
  for (const SegmentBudget& b : ours.segments)
    EXPECT_EQ(b.memory, naive.segment_memory.at(to_text(b.of))) << to_text(b.of);
}

void expect_naive(const Lab& lab) {
  const Index index(lab);
  const std::vector<ExerciseBudgets> ours = budgets_of(index, AddressesInUse(index));
  ASSERT_EQ(ours.size(), lab.exercises.size() + 1);
  const std::vector<test::NaiveBudgets> naive = test::naive_budgets(lab);
  for (std::size_t e = 0; e < lab.exercises.size(); ++e) EXPECT_EQ(ours[e + 1].exercise, lab.exercises[e].id);
  for (std::size_t i = 0; i < ours.size(); ++i) expect_equal(lab, ours[i], naive[i]);
}

TEST(Budgets, AgreeWithTheNaiveReferenceOnAnyLab) {
  for (int seed = 0; seed < test::scaled(2000) && !testing::Test::HasFailure(); ++seed) {
    SCOPED_TRACE(seed);
    Random r(static_cast<std::uint64_t>(seed));
    expect_naive(test::random_lab(r, 8));
  }
}

TEST(Budgets, AgreeWithTheNaiveReferenceOnPlausibleLabs) {
  for (int seed = 0; seed < test::scaled(200) && !testing::Test::HasFailure(); ++seed) {
    SCOPED_TRACE(seed);
    Random r(static_cast<std::uint64_t>(seed));
    expect_naive(test::plausible_lab(r, 40, 6));
  }
}

TEST(Budgets, AnInnerGuestRunsOnlyWhileEveryCarrierRuns) {
  Ship ship;
  const MachineId inner = ship.add_machine("deck-c", ship.hypervisor, 4096, ship.deck_b);
  const MachineId deepest = ship.add_machine("log", ship.application, 1024, inner);
  ship.exercise(ship.quiet).on = {inner, deepest, ship.tickets};
  const Index index(ship.lab);
  for (const std::uint8_t on : running(index, ship.quiet)) EXPECT_EQ(on, 0);
  ship.exercise(ship.quiet).on.push_back(ship.deck_b);
  const auto on = running(Index(ship.lab), ship.quiet);
  EXPECT_EQ(on[index.place(ship.deck_b)], 1);
  EXPECT_EQ(on[index.place(inner)], 1);
  EXPECT_EQ(on[index.place(deepest)], 1);
  EXPECT_EQ(on[index.place(ship.tickets)], 0);
  for (const std::uint8_t all : running(index, ExerciseId{})) EXPECT_EQ(all, 1);
}

// The PC counts a hypervisor's whole memory and not its guests.
TEST(Budgets, GuestsAreCountedOnceInside) {
  Ship ship;
  const Index index(ship.lab);
  const auto before = budgets_of(index, AddressesInUse(index));
  ship.machine(ship.tickets).memory += 1024;
  const Index grown(ship.lab);
  const auto after = budgets_of(grown, AddressesInUse(grown));
  EXPECT_EQ(after[0].memory[0].taken, before[0].memory[0].taken);
  EXPECT_EQ(after[0].memory[1].taken, before[0].memory[1].taken + 1024 + 2);
}

} // namespace
} // namespace snug
