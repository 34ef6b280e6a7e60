// The ruler beside another exercise.

#include "core/layout/draw.h"
#include "tests/support/sample.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct Ruled {
  Lab lab = sample("skerry-ferries");
  Analysis analysis{lab};
  static constexpr int kWidth = 1000;
  ExerciseId other = exercise(lab, "Names and logins");

  std::vector<std::string> texts(std::optional<ExerciseId> beside) const {
    std::vector<std::string> out;
    for (const AnyShape& s : draw_ruler(analysis, {}, kWidth, beside).shapes)
      if (const auto* t = std::get_if<TextShape>(&s)) out.push_back(t->text);
    return out;
  }
};

TEST(CompareRuler, SaysWhatTheOtherTakes) {
  const Ruled r;
  std::int64_t all = 0, then = 0;
  for (const MemoryBudget& b : r.analysis.budgets({}).memory)
    if (b.of.kind == Kind::pc) all = b.taken;
  for (const MemoryBudget& b : r.analysis.budgets(r.other).memory)
    if (b.of.kind == Kind::pc) then = b.taken;
  ASSERT_LT(then, all);
  const auto texts = r.texts(r.other);
  const std::string wanted =
      "Names and logins: " + show_mib(then) + ", that is " + show_mib(all - then) + " less";
  EXPECT_NE(std::find(texts.begin(), texts.end(), wanted), texts.end()) << wanted;
}

TEST(CompareRuler, OutlinesItToScaleAndHatchesWhatIsOff) {
  const Ruled r;
  const Drawing plain = draw_ruler(r.analysis, {}, Ruled::kWidth),
                both = draw_ruler(r.analysis, {}, Ruled::kWidth, r.other);
  const auto dashed = [](const Drawing& d) {
    return std::find_if(d.shapes.begin(), d.shapes.end(), [](const AnyShape& s) {
      const auto* box = std::get_if<BoxShape>(&s);
      return box && box->dash == Dash::dash;
    });
  };
  EXPECT_EQ(dashed(plain), plain.shapes.end());
  ASSERT_NE(dashed(both), both.shapes.end());
  std::int64_t then = 0;
  for (const MemoryBudget& b : r.analysis.budgets(r.other).memory)
    if (b.of.kind == Kind::pc) then = b.taken;
  const std::int64_t pixel = mib_per_pixel(r.analysis, {}, Ruled::kWidth);
  const std::int64_t wide = std::get<BoxShape>(*dashed(both)).box.w * pixel;
  EXPECT_NEAR(static_cast<double>(wide), static_cast<double>(then + 6 * 1024), 2.0 * 1024)
      << "with the PC's own 6 GiB";
  const auto hatched = [&](const char* name) {
    return std::count_if(both.shapes.begin(), both.shapes.end(), [&](const AnyShape& s) {
      const auto* line = std::get_if<LineShape>(&s);
      return line && line->ink == Ink::hatch && line->of == AnyId(machine(r.lab, name).id);
    });
  };
  EXPECT_GT(hatched("deck-a"), 0);
  EXPECT_EQ(hatched("beacon"), 0) << "is on in both";
}

TEST(CompareRuler, WithItselfIsPlain) {
  const Ruled r;
  EXPECT_EQ(r.texts(ExerciseId{}), r.texts(std::nullopt));
}

} // namespace
} // namespace snug::test
