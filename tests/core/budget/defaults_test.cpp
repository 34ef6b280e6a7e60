#include "core/budget/defaults.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

constexpr std::int64_t kGib = 1024;

// MODEL, Memory: 4 GiB on a 16 GiB PC, 6 at 32, 8 at 64; 1 GiB kept free up to 16, else 2. Common practice,
// no published source.
TEST(Defaults, ReserveAndKeepFreeBySizeOfThePc) {
  for (const auto& [installed, reserve, free] : {std::array<std::int64_t, 3>{8, 4, 1},
                                                 {16, 4, 1},
                                                 {17, 6, 2},
                                                 {24, 6, 2},
                                                 {32, 6, 2},
                                                 {48, 6, 2},
                                                 {63, 6, 2},
                                                 {64, 8, 2},
                                                 {128, 8, 2}}) {
    EXPECT_EQ(usual_reserve(installed * kGib), reserve * kGib) << installed;
    EXPECT_EQ(usual_keep_free(installed * kGib), free * kGib) << installed;
  }
}

TEST(Defaults, WhatIsTypedWins) {
  Pc pc;
  pc.installed = 32 * kGib;
  EXPECT_EQ(usable(pc), 32 * kGib);
  EXPECT_EQ(reserved(pc), 6 * kGib);
  EXPECT_EQ(keep_free(pc), 2 * kGib);
  pc.usable = 30 * kGib;
  pc.reserved = 0;
  pc.keep_free = 512;
  EXPECT_EQ(usable(pc), 30 * kGib);
  EXPECT_EQ(reserved(pc), 0);
  EXPECT_EQ(keep_free(pc), 512);
}

} // namespace
} // namespace snug
