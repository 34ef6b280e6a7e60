#include "core/budget/verdict.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

ExerciseBudgets roomy() {
  ExerciseBudgets b;
  b.memory.push_back({AnyId{Kind::pc, 0}, 10'000, 1000, 1000, 2048});
  b.memory.push_back({MachineId{1}, 4000, 100, 100, 0});
  b.disks.push_back({VolumeId{2}, 1000, 10, 20});
  ProcessorBudget p;
  p.of = AnyId{Kind::pc, 0};
  p.ratio = 100;
  p.limit = 300;
  b.processors.push_back(p);
  return b;
}

TEST(VerdictOf, FitsWhenEverythingDoes) {
  EXPECT_EQ(verdict_of(roomy()).verdict, Verdict::fits);
  EXPECT_TRUE(verdict_of(roomy()).where.empty());
}

TEST(VerdictOf, AHypervisorThatIsOverCountsLikeThePc) {
  ExerciseBudgets b = roomy();
  b.memory[0].taken = 9000; // tight
  b.memory[1].taken = 4001;
  EXPECT_EQ(verdict_of(b).verdict, Verdict::over);
  EXPECT_EQ(verdict_of(b).where, (std::vector<AnyId>{MachineId{1}}));
}

TEST(VerdictOf, TightNamesEverythingThatIsTightOnce) {
  ExerciseBudgets b = roomy();
  b.memory[0].taken = 9000;
  b.disks[0].worst = 1001;
  b.processors[0].ratio = 301;
  EXPECT_EQ(verdict_of(b).verdict, Verdict::tight);
  EXPECT_EQ(verdict_of(b).where, (std::vector<AnyId>{AnyId{Kind::pc, 0}, VolumeId{2}}));
  EXPECT_TRUE(verdict_of(b).memory && verdict_of(b).disks && verdict_of(b).processors);
  b.disks[0].expected = 1001;
  EXPECT_EQ(verdict_of(b).verdict, Verdict::over);
  EXPECT_TRUE(verdict_of(b).disks);
  EXPECT_FALSE(verdict_of(b).memory || verdict_of(b).processors); // those are only tight
}

} // namespace
} // namespace snug
