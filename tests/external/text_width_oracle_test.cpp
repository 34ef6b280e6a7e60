// The table of widths against the font itself, read by FreeType.
#include "core/layout/text_width.h"

#include "tests/support/hostile.h"
#include "tests/support/process.h"

#include <gtest/gtest.h>

#include <sstream>

namespace snug {
namespace {

TEST(TextWidthOracle, TableIsTheFont) {
  const auto ran = test::run_program({"/usr/bin/python3", SNUG_SOURCE_DIR "/tests/tools/advance_oracle.py"});
  if (ran.code == 3) GTEST_SKIP() << "the font Inter (fonts-inter) or FreeType is not installed";
  ASSERT_EQ(ran.code, 0) << ran.err;
  std::istringstream in(ran.out);
  int checked = 0;
  int zero = 0;
  for (std::uint32_t code = 0, regular = 0, semibold = 0; in >> code >> regular >> semibold;) {
    const std::string text = test::utf8(static_cast<char32_t>(code));
    const auto width = [&](Weight weight) { return static_cast<std::uint32_t>(text_units(text, weight)); };
    if (width(Weight::regular) == 0) {
      ++zero; // a mark: no width, whatever the font says
      continue;
    }
    EXPECT_EQ(width(Weight::regular), regular) << code;
    EXPECT_EQ(width(Weight::semibold), semibold) << code;
    ++checked;
  }
  EXPECT_GT(checked, 1500);
  EXPECT_LT(zero, 250);
}

} // namespace
} // namespace snug
