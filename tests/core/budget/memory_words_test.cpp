#include "core/budget/memory_words.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

std::string words(std::int64_t budget, std::int64_t taken, std::int64_t keep_free) {
  MemoryBudget b;
  b.budget = budget;
  b.taken = taken;
  b.keep_free = keep_free;
  return english(running_words(b));
}

TEST(RunningWords, SayWhatIsLeftOrLacking) {
  EXPECT_EQ(words(28 * 1024, 25 * 1024, 0), "running 25.0 GiB of 28.0 GiB · headroom 3.0 GiB");
  EXPECT_EQ(words(28 * 1024, 25 * 1024, 4096), "running 25.0 GiB of 28.0 GiB · headroom 3.0 GiB · tight");
  EXPECT_EQ(words(28 * 1024, 30 * 1024, 4096), "running 30.0 GiB of 28.0 GiB · over by 2.0 GiB");
}

// A PC whose system alone needs more than it has.
TEST(RunningWords, NobodyHasLessThanNothing) {
  EXPECT_EQ(words(-4 * 1024, 0, 0), "running 0 MiB of 0 MiB · over by 4.0 GiB");
}

} // namespace
} // namespace snug
