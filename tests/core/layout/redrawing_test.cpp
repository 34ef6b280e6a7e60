// What is drawn from kept content is what is drawn from nothing.

#include "core/edit/edit.h"
#include "core/layout/draw.h"
#include "core/report/svg.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

// All that a drawing says, in words: shapes by their picture, groups and sizes beside it.
std::string said(const Drawing& d) {
  std::string out = svg(d, {Theme::light});
  for (const Group& g : d.groups)
    out += to_text(g.of) + " " + std::to_string(g.first) + " " + std::to_string(g.end) + " " +
           std::to_string(g.box.x) + " " + std::to_string(g.box.y) + " " + std::to_string(g.box.w) + " " +
           std::to_string(g.box.h) + "\n";
  return out;
}

DrawOptions of_a_drag() {
  DrawOptions options;
  options.describe = options.full_addresses = options.show_ruler = options.show_legend = false;
  return options;
}

// Draws the lab, then after each of some edits and after taking them back.
void compare(Lab lab, test::Random& random, const std::string& what) {
  Redrawing redrawing;
  DrawOptions options = of_a_drag();
  std::vector<Edit> back;
  std::vector<AnyId> ids;
  for (int step = 0; step < 12; ++step) {
    const Analysis analysis(lab);
    ASSERT_EQ(said(redrawing.draw(analysis, options, ids)), said(draw(analysis, options)))
        << what << ", step " << step;
    Edit next = step % 3 == 2 && !back.empty() ? back.back() : test::random_edit(random, lab);
    if (step % 3 == 2 && !back.empty()) back.pop_back();
    ids = touched(next);
    if (step % 3 != 2) back.push_back(inverse(next));
    ASSERT_TRUE(apply(lab, next).has_value());
    if (random.chance(10)) options.inner_addresses = !options.inner_addresses;
    if (random.chance(10)) options.exercise = lab.exercises.empty() ? ExerciseId{} : lab.exercises[0].id;
    if (!find<Exercise>(lab, options.exercise)) options.exercise = {};
  }
}

TEST(Redrawing, EqualsDrawingAnyLab) {
  for (int i = 0; i < test::scaled(400); ++i) {
    test::Random random(static_cast<std::uint64_t>(i) + 1);
    compare(test::random_lab(random, 10), random, "lab " + std::to_string(i));
  }
}

// Fields of machines and cards change, which is what is kept apart.
TEST(Redrawing, EqualsDrawingPlausibleLabs) {
  for (int i = 0; i < test::scaled(200); ++i) {
    test::Random random(static_cast<std::uint64_t>(i) + 1);
    Lab lab = test::plausible_lab(random, 2 + random.below(30), 1 + random.below(8));
    Redrawing redrawing;
    std::vector<AnyId> ids;
    for (int step = 0; step < 12; ++step) {
      const Analysis analysis(lab);
      ASSERT_EQ(said(redrawing.draw(analysis, of_a_drag(), ids)), said(draw(analysis, of_a_drag())))
          << "lab " << i << ", step " << step;
      const bool of_card = !lab.cards.empty() && random.chance(50);
      const AnyId id = of_card ? AnyId(lab.cards[random.below(lab.cards.size())].id)
                               : AnyId(lab.machines[random.below(lab.machines.size())].id);
      const auto fields = info_of(id.kind).fields;
      const FieldInfo& field = fields[random.below(fields.size())];
      EditBuilder edit(lab);
      edit.set(id, field.key, test::random_value(random, lab, field));
      const Edit made = std::move(edit).take({});
      ids.clear();
      if (apply(lab, made)) ids = touched(made);
    }
  }
}

TEST(Redrawing, MakesOnlyWhatIsTouched) {
  Lab lab = test::sample("skerry-ferries");
  Redrawing redrawing;
  {
    const Analysis analysis(lab);
    (void)redrawing.draw(analysis, of_a_drag(), {});
  }
  EXPECT_EQ(redrawing.made(), static_cast<std::int64_t>(lab.machines.size()));
  const MachineId id = lab.machines.back().id;
  ASSERT_TRUE(apply(lab, set_field(lab, id, "name", std::string("other"))).has_value());
  const std::int64_t before = redrawing.made();
  const std::vector<AnyId> touched{id};
  {
    const Analysis analysis(lab);
    (void)redrawing.draw(analysis, of_a_drag(), touched);
  }
  EXPECT_EQ(redrawing.made() - before, 1);
  redrawing.forget();
  const Analysis analysis(lab);
  (void)redrawing.draw(analysis, of_a_drag(), {});
  EXPECT_EQ(redrawing.made() - before - 1, static_cast<std::int64_t>(lab.machines.size()));
}

} // namespace
} // namespace snug
