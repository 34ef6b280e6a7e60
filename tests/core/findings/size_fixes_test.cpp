#include "core/findings/size_fixes.h"

#include "core/analyse/analyse.h"
#include "tests/support/ship_lab.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug::test {
namespace {

// The repair of "the PC is over" for a lab of which nothing but the PC's reserve is changed.
std::optional<Fix> repair(const Lab& lab) {
  const Analysis a = analyse(lab);
  for (const Finding& f : a.findings())
    if (f.rule->id == "memory-over" && f.places.front().kind == Kind::pc) return a.fix(f);
  return std::nullopt;
}

std::size_t machines_in(const Edit& edit) {
  return static_cast<std::size_t>(std::count_if(edit.steps.begin(), edit.steps.end(), [](const Primitive& p) {
    const auto* set = std::get_if<SetField>(&p);
    return set && set->id.kind == Kind::machine;
  }));
}

// Those that give most are made smaller, and no more of them than it takes.
TEST(SizeFixes, TakeNoMoreThanIsLacking) {
  Ship ship; // what runs takes 38128 MiB
  std::size_t before = 0;
  for (const std::int64_t lacks : {1, 2000, 6000, 8000}) {
    ship.lab.pc.reserved = 65536 - 38128 + lacks;
    const auto fix = repair(ship.lab);
    ASSERT_TRUE(fix) << lacks;
    const std::size_t now = machines_in(fix->edit);
    EXPECT_GE(now, before) << lacks;
    EXPECT_EQ(fix->label.args.front(), Argument(Count{static_cast<std::int64_t>(now)}));
    before = now;
    Lab mended = ship.lab;
    ASSERT_TRUE(apply(mended, fix->edit));
    EXPECT_FALSE(repair(mended));
  }
  ship.lab.pc.reserved = 65536 - 38128 + 1;
  EXPECT_LT(machines_in(repair(ship.lab)->edit), before);
}

} // namespace
} // namespace snug::test
