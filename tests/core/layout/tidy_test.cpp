#include "core/layout/tidy.h"

#include "core/layout/draw.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <map>
#include <numeric>

namespace snug::test {
namespace {

// Counted on the picture: an upright wire that meets a level rail between its ends.
std::int64_t crossings_drawn(const Analysis& analysis) {
  DrawOptions options;
  options.show_ruler = options.show_legend = options.describe = false;
  const Drawing d = draw(analysis, options);
  std::vector<LineShape> wires, rails;
  for (const AnyShape& shape : d.shapes)
    if (const auto* line = std::get_if<LineShape>(&shape)) {
      if (line->part == Part::wire) wires.push_back(*line);
      if (line->part == Part::rail) rails.push_back(*line);
    }
  std::int64_t count = 0;
  for (const LineShape& w : wires) {
    EXPECT_EQ(w.from.x, w.to.x);
    for (const LineShape& r : rails)
      count += r.from.y == r.to.y && std::min(w.from.y, w.to.y) < r.from.y &&
                       r.from.y < std::max(w.from.y, w.to.y) && std::min(r.from.x, r.to.x) <= w.from.x &&
                       w.from.x <= std::max(r.from.x, r.to.x)
                   ? 1
                   : 0;
  }
  return count;
}

constexpr std::string_view kSamples[] = {"skerry-ferries", "skerry-ferries-16", "branch-office", "mistakes",
                                         "sixty"};

TEST(Tidy, CountsWhatThePictureShows) {
  for (const std::string_view name : kSamples) {
    const Lab lab = sample(name);
    const Analysis a(lab);
    EXPECT_EQ(tidiness(a).crossings, crossings_drawn(a)) << name;
  }
}

TEST(Tidy, TakesCrossingsAwayAndIsTakenBack) {
  for (const std::string_view name : kSamples) {
    Lab lab = sample(name);
    const Lab before = lab;
    const Tidiness was = tidiness(Analysis(lab));
    const Edit edit = tidy(Analysis(lab));
    ASSERT_TRUE(apply(lab, edit)) << name;
    const Tidiness is = tidiness(Analysis(lab));
    EXPECT_TRUE(edit.steps.empty() || is < was) << name;
    EXPECT_TRUE(tidy(Analysis(lab)).steps.empty() || tidiness(Analysis(lab)) == is) << name;
    ASSERT_TRUE(apply(lab, inverse(edit)));
    EXPECT_EQ(lab, before) << name;
  }
}

// Letters and colours of rails, by segment.
std::map<AnyId, std::pair<std::string, Ink>> dress(const Lab& lab) {
  std::map<AnyId, std::pair<std::string, Ink>> out;
  for (const AnyShape& s : draw(Analysis(lab)).shapes) {
    const auto* t = std::get_if<TextShape>(&s);
    if (t && t->part == Part::name && t->text.size() == 1) out[t->of].first = t->text;
    const auto* line = std::get_if<LineShape>(&s);
    if (line && line->part == Part::rail) out[line->of].second = line->ink;
  }
  return out;
}

// Notes that speak of "segment C" stay true.
TEST(Tidy, LettersAndColoursStay) {
  for (const std::string_view name : kSamples) {
    Lab lab = sample(name);
    const auto before = dress(lab);
    EXPECT_EQ(before.size(), lab.segments.size());
    ASSERT_TRUE(apply(lab, tidy(Analysis(lab))));
    EXPECT_EQ(dress(lab), before) << name;
  }
}

// Every order of up to five rails.
TEST(Tidy, NoOrderOfRailsHasFewerCrossings) {
  for (int i = 0, n = scaled(200); i < n; ++i) {
    Random random(static_cast<std::uint64_t>(i) + 1);
    Lab lab = plausible_lab(random, 2 + random.below(8), 2 + random.below(4));
    for (Machine& m : lab.machines) m.pinned = true;
    ASSERT_TRUE(apply(lab, tidy(Analysis(lab))));
    const std::int64_t found = tidiness(Analysis(lab)).crossings;
    std::vector<std::int32_t> order(lab.segments.size());
    std::iota(order.begin(), order.end(), 0);
    do {
      Lab other = lab;
      for (std::size_t s = 0; s < order.size(); ++s) other.segments[s].order = order[s];
      const Analysis a(other);
      ASSERT_LE(found, tidiness(a).crossings) << "lab " << i;
    } while (std::next_permutation(order.begin(), order.end()));
  }
}

TEST(Tidy, WhoIsPinnedStays) {
  for (int i = 0, n = scaled(400); i < n; ++i) {
    Random random(static_cast<std::uint64_t>(i) + 1);
    Lab lab = plausible_lab(random, 12, 5);
    for (std::size_t m = 0; m < lab.machines.size(); ++m) {
      lab.machines[m].order = static_cast<std::int32_t>(m);
      lab.machines[m].pinned = random.chance(40);
    }
    const Lab before = lab;
    ASSERT_TRUE(apply(lab, tidy(Analysis(lab))));
    const auto place = [](const Lab& l, const Machine& of) {
      return std::count_if(l.machines.begin(), l.machines.end(), [&](const Machine& m) {
        return m.carrier == of.carrier && m.band == of.band && m.order < of.order;
      });
    };
    for (std::size_t m = 0; m < lab.machines.size(); ++m)
      EXPECT_TRUE(!lab.machines[m].pinned ||
                  place(lab, lab.machines[m]) == place(before, before.machines[m]));
  }
}

// More rails than are tried in every order: still no worse, and moving a single rail gains nothing.
TEST(Tidy, ManyRails) {
  Random random(5);
  Lab lab = plausible_lab(random, 40, 16);
  for (Machine& m : lab.machines) m.pinned = true;
  const Tidiness was = tidiness(Analysis(lab));
  ASSERT_TRUE(apply(lab, tidy(Analysis(lab))));
  const Tidiness is = tidiness(Analysis(lab));
  EXPECT_LT(is, was);
  for (std::size_t from = 0; from < lab.segments.size(); ++from) {
    Lab other = lab;
    other.segments[from].order = -1;
    EXPECT_GE(tidiness(Analysis(other)).crossings, is.crossings);
  }
}

} // namespace
} // namespace snug::test
