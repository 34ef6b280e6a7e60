#include "core/net/bits128.h"

#include <gtest/gtest.h>
#include <random>

namespace snug {
namespace {

__extension__ using Wide = unsigned __int128; // the compiler's own arithmetic, only as an oracle

Wide wide(Bits128 b) { return (static_cast<Wide>(b.high) << 64U) | b.low; }

TEST(Bits128, OnesAndPowers) {
  for (int n = 0; n <= 128; ++n) {
    const Wide expected = n == 128 ? ~Wide{0} : (Wide{1} << n) - 1;
    EXPECT_TRUE(wide(Bits128::ones(n)) == expected) << n;
    if (n < 128) {
      EXPECT_TRUE(wide(Bits128::power(n)) == Wide{1} << n) << n;
    }
  }
}

TEST(Bits128, AgreesWithTheCompilersArithmetic) {
  std::mt19937_64 random(128);
  for (int i = 0; i < 10'000; ++i) {
    const Bits128 a{random() % 4, random() >> (random() % 64)}, b{random() % 4, random() >> (random() % 64)};
    ASSERT_TRUE(wide(a + b) == wide(a) + wide(b));
    ASSERT_TRUE(wide(a - b) == wide(a) - wide(b));
    ASSERT_TRUE(wide(a & ~b) == (wide(a) & ~wide(b)));
    ASSERT_TRUE(wide(a | b) == (wide(a) | wide(b)));
    ASSERT_EQ(a < b, wide(a) < wide(b));
  }
}

TEST(Bits128, Saturates) {
  EXPECT_EQ((Bits128{0, 7}.saturated()), 7);
  EXPECT_EQ((Bits128{0, 0x7fffffffffffffff}.saturated()), INT64_MAX);
  EXPECT_EQ((Bits128{0, 0x8000000000000000}.saturated()), INT64_MAX);
  EXPECT_EQ((Bits128{1, 0}.saturated()), INT64_MAX);
}

} // namespace
} // namespace snug
