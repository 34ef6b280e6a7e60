#include "core/budget/expected.h"

#include "core/budget/memory.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

// What the PC is expected to give is the sum of what its running machines are expected to take.
TEST(Expected, AddsUpToThePcsBudget) {
  for (const char* name : {"skerry-ferries", "sixty", "mistakes", "old-pc"}) {
    const Lab lab = sample(name);
    const Index index(lab);
    const AddressesInUse in_use(index);
    for (const ExerciseBudgets& b : budgets_of(index, in_use)) {
      std::int64_t sum = 0;
      for (const std::uint32_t m : index.guests_of(kNowhere)) {
        const std::int64_t expected = expected_of(index, b, m);
        EXPECT_LE(expected, takes(index, m));
        sum += expected;
      }
      EXPECT_EQ(sum, b.memory.front().expected) << name;
    }
  }
}

TEST(Expected, IsAShareOfMemoryAndWholeOverhead) {
  Lab lab = sample("skerry-ferries");
  for (Machine& m : lab.machines)
    if (m.name == "beacon") m.expected_percent = 25;
  const Index index(lab);
  const AddressesInUse in_use(index);
  const std::uint32_t beacon = index.place(machine(lab, "beacon").id);
  const auto budgets = budgets_of(index, in_use);
  EXPECT_EQ(expected_of(index, budgets.front(), beacon),
            lab.machines[beacon].memory / 4 + overhead(index, beacon));
  const std::uint32_t tickets = index.place(machine(lab, "tickets-1").id);
  EXPECT_EQ(expected_of(index, budgets[1], tickets), 0) << "off in the first exercise";
}

} // namespace
} // namespace snug::test
