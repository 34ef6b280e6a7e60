#include "core/gesture/rails.h"

#include "core/gesture/move.h"
#include "tests/support/ferries.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct RailFerries : Ferries {
  const Segment& its(std::string_view name) { return *find<Segment>(lab, segment(name)); }
  std::string rails() const {
    std::string out;
    for (const SegmentId s : rails_in_order(lab)) out += name_of(lab, s) + " ";
    return out;
  }
  void take(const Edit& edit) { EXPECT_TRUE(apply(lab, edit)); }
  void take(const Result<Edit>& edit) {
    ASSERT_TRUE(edit) << english(edit.error().message);
    take(*edit);
  }
};

TEST(Rails, MoveBeforeAnotherAndToTheEnd) {
  RailFerries f;
  ASSERT_EQ(f.rails(), "House LAN Steering Cargo Transfer Passengers Crew ");
  const Edit edit = move_rail(f.lab, f.segment("Crew"), f.segment("Cargo"));
  EXPECT_EQ(english(edit.label), "Move Crew");
  f.take(edit);
  EXPECT_EQ(f.rails(), "House LAN Steering Crew Cargo Transfer Passengers ");
  f.take(move_rail(f.lab, f.segment("House LAN"), {}));
  EXPECT_EQ(f.rails(), "Steering Crew Cargo Transfer Passengers House LAN ");
  EXPECT_TRUE(move_rail(f.lab, f.segment("House LAN"), {}).empty());
  EXPECT_TRUE(move_rail(f.lab, f.segment("Crew"), f.segment("Cargo")).empty());
  EXPECT_TRUE(move_rail(f.lab, f.segment("Crew"), f.segment("Crew")).empty());
}

TEST(Rails, ShiftByOneAndBack) {
  RailFerries f;
  const Lab before = f.lab;
  f.take(shift(f.lab, f.segment("Cargo"), true));
  EXPECT_EQ(f.rails(), "House LAN Steering Transfer Cargo Passengers Crew ");
  f.take(shift(f.lab, f.segment("Cargo"), false));
  EXPECT_EQ(f.rails(), "House LAN Steering Cargo Transfer Passengers Crew ");
  EXPECT_TRUE(shift(f.lab, f.segment("House LAN"), false).empty());
  EXPECT_TRUE(shift(f.lab, f.segment("Crew"), true).empty());
  const MachineId hold = machine(f.lab, "hold").id;
  const auto at = [&] {
    const auto all = guests_in_order(f.lab, {});
    return std::find(all.begin(), all.end(), hold) - all.begin();
  };
  const auto was = at();
  f.take(shift(f.lab, hold, false));
  EXPECT_EQ(at(), was - 1);
  f.take(shift(f.lab, hold, true));
  EXPECT_EQ(at(), was);
  EXPECT_TRUE(shift(f.lab, guests_in_order(f.lab, {}).front(), false).empty());
  EXPECT_TRUE(shift(f.lab, AnyId{Kind::pc, 0}, true).empty());
}

TEST(Rails, LeadOutByTranslationAndBack) {
  RailFerries f;
  const Lab before = f.lab;
  const auto edit = lead_out(f.lab, f.segment("Cargo"), SegmentKind::nat);
  f.take(edit);
  EXPECT_EQ(english(edit->label), "Lead Cargo out by translation (NAT)");
  EXPECT_EQ(f.its("Cargo").type, SegmentKind::nat);
  EXPECT_EQ(f.its("Cargo").lan, f.lab.lans.front().id);
  EXPECT_EQ(f.its("Cargo").prefix4, find<Segment>(before, f.segment("Cargo"))->prefix4)
      << "it stays the same network";
  f.take(lead_out(f.lab, f.segment("Cargo"), SegmentKind::isolated));
  EXPECT_EQ(f.lab, before);
}

TEST(Rails, ABridgedOneTakesItsLansPrefix) {
  RailFerries f;
  f.take(lead_out(f.lab, f.segment("Cargo"), SegmentKind::bridged, f.lab.lans.front().id));
  EXPECT_FALSE(f.its("Cargo").prefix4);
  EXPECT_EQ(f.its("Cargo").lan, f.lab.lans.front().id);
  f.take(lead_out(f.lab, f.segment("Cargo"), SegmentKind::isolated));
  EXPECT_TRUE(f.its("Cargo").prefix4) << "a plan of its own again";
  EXPECT_FALSE(f.its("Cargo").lan);
  f.lab.lans.clear();
  const auto refused = lead_out(f.lab, f.segment("Cargo"), SegmentKind::bridged);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().message.id(), "gesture-no-lan");
}

// Every edit is taken back exactly.
TEST(Rails, HaveInverses) {
  for (int i = 0, n = scaled(500); i < n; ++i) {
    Random random(static_cast<std::uint64_t>(i) + 1);
    Lab lab = plausible_lab(random, 6, 5);
    const Lab before = lab;
    const auto any = [&] { return lab.segments[random.below(lab.segments.size())].id; };
    Edit edit;
    switch (random.below(3)) {
    case 0:
      edit = move_rail(lab, any(), random.chance(20) ? SegmentId{} : any());
      break;
    case 1:
      edit = random.chance(50)
                 ? shift(lab, any(), random.chance(50))
                 : shift(lab, lab.machines[random.below(lab.machines.size())].id, random.chance(50));
      break;
    default:
      if (auto e = lead_out(lab, any(), static_cast<SegmentKind>(random.below(3)))) edit = *e;
    }
    ASSERT_TRUE(apply(lab, edit));
    EXPECT_EQ(lab == before, edit.empty());
    ASSERT_TRUE(apply(lab, inverse(edit)));
    ASSERT_EQ(lab, before);
  }
}

} // namespace
} // namespace snug::test
