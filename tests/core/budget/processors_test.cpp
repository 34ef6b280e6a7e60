#include "core/budget/processors.h"

#include "tests/support/ship_lab.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Ship;

// MODEL, Processors: a second thread gives about a quarter, efficiency cores count apart. Common practice, no
// published source.
TEST(Processors, PowerOfThePc) {
  Pc pc;
  Rules rules;
  pc.cores = 8;
  pc.threads = 8;
  EXPECT_EQ(processor_power(pc, rules), 800);
  pc.threads = 16;
  EXPECT_EQ(processor_power(pc, rules), 1000);
  pc.cores = 12; // 8 and 4 efficiency cores, 8 second threads
  pc.threads = 20;
  pc.efficiency_cores = 4;
  EXPECT_EQ(processor_power(pc, rules), 800 + 200 + 200);
  pc.efficiency_cores = 99; // never more than there are
  EXPECT_EQ(processor_power(pc, rules), 600 + 200);
}

TEST(Processors, TheLimitIsExact) {
  Ship ship;
  ship.lab.pc.cores = ship.lab.pc.threads = 3;
  ship.machine(ship.helm).processors = 1; // 9 on 3 cores: 3.0
  const auto budget = [&] {
    const Index index(ship.lab);
    const GuestCosts costs = guest_costs(index);
    return processor_budgets(ship.lab, costs, insides(costs, running(index, {})))[0];
  };
  EXPECT_EQ(budget().ratio, 300);
  EXPECT_EQ(budget().verdict(), Verdict::fits);
  ship.machine(ship.helm).processors = 2; // 10 on 3: 3.333, rounded up
  EXPECT_EQ(budget().ratio, 334);
  EXPECT_EQ(budget().verdict(), Verdict::over);
}

TEST(Processors, DeepNestingDoesNotOverflow) {
  Lab lab;
  for (std::uint32_t i = 1; i <= 200; ++i) {
    Machine m;
    m.id.number = i;
    m.carrier.number = i - 1;
    m.processors = i % 2 == 0 ? 1024 : 1;
    lab.machines.push_back(m);
  }
  const Index index(lab);
  const GuestCosts costs = guest_costs(index);
  for (const ProcessorBudget& b : processor_budgets(lab, costs, insides(costs, running(index, {})))) {
    EXPECT_GE(b.product, 0);
    EXPECT_LE(b.product, 1'000'000'000);
  }
}

} // namespace
} // namespace snug
