#include "core/layout/between.h"

#include "core/edit/edit.h"
#include "core/layout/draw.h"
#include "core/layout/tidy.h"
#include "core/report/svg.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"

#include <cstdlib>
#include <gtest/gtest.h>

namespace snug::test {
namespace {

std::string picture(const Drawing& d) { return svg(d, {Theme::light}); }

struct Move {
  Drawing before, after;
  explicit Move(Lab lab) : before(draw(Analysis(lab))) {
    EXPECT_TRUE(apply(lab, tidy(Analysis(lab))));
    after = draw(Analysis(lab));
  }
};

// A machine's card, the first box of its group.
Box card_of(const Drawing& d, AnyId id) {
  for (const AnyShape& shape : d.shapes)
    if (const auto* box = std::get_if<BoxShape>(&shape); box && box->of == id && box->part == Part::machine)
      return box->box;
  return {};
}

TEST(Between, EndsAtTheNewDrawing) {
  const Move m(sample("mistakes"));
  ASSERT_NE(picture(m.before), picture(m.after));
  EXPECT_EQ(picture(between(m.before, m.after, kArrived)), picture(m.after));
  EXPECT_EQ(picture(between(m.before, m.after, kArrived + 5)), picture(m.after));
  EXPECT_EQ(picture(between(m.after, m.after, 0)), picture(m.after));
}

TEST(Between, CardsBeginWhereTheyWereAndGoStraight) {
  const Lab lab = sample("mistakes");
  const Move m(lab);
  const Drawing start = between(m.before, m.after, 0), half = between(m.before, m.after, kArrived / 2);
  for (const Machine& machine : lab.machines) {
    const Box a = card_of(m.before, machine.id), b = card_of(m.after, machine.id);
    EXPECT_EQ(card_of(start, machine.id), a) << machine.name;
    EXPECT_LE(std::abs(2 * card_of(half, machine.id).x - a.x - b.x), 2) << machine.name;
    EXPECT_LE(std::abs(2 * card_of(half, machine.id).y - a.y - b.y), 2) << machine.name;
  }
}

TEST(Between, AnyTwoLabs) {
  Random random(3);
  for (int i = 0; i < 30; ++i) {
    const Lab a = plausible_lab(random, 6, 4), b = plausible_lab(random, 9, 3);
    const Drawing from = draw(Analysis(a)), to = draw(Analysis(b));
    for (const int at : {-3, 0, 400, kArrived})
      EXPECT_EQ(between(from, to, at).shapes.size(), to.shapes.size());
  }
}

} // namespace
} // namespace snug::test
