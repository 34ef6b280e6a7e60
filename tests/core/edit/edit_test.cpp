#include "core/edit/build.h"
#include "core/edit/history.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Random;

constexpr Template kLabel{"test-label", "Test"};

Lab small_lab() {
  Lab lab;
  EditBuilder b(lab);
  Machine deck;
  deck.name = "deck-a";
  const MachineId a = b.add(deck);
  Machine inner;
  inner.name = "tickets-1";
  inner.carrier = a;
  const MachineId t = b.add(inner);
  Card card;
  card.machine = t;
  b.add(card);
  Exercise e;
  e.on = {a, t};
  b.add(e);
  Promise p;
  p.from = t;
  p.to = AnyId{Kind::outside, 0};
  b.add(p);
  EXPECT_TRUE(apply(lab, std::move(b).take(say(kLabel))).has_value());
  return lab;
}

// The one law every edit keeps: undo gives the lab as it was, redo the edited one (STYLE 2).
TEST(Edit, InverseRestoresTheLabExactly) {
  for (int seed = 0; seed < test::scaled(20'000); ++seed) {
    Random r(static_cast<std::uint64_t>(seed));
    Lab lab = test::random_lab(r, 4);
    const Lab before = lab;
    const Edit e = test::random_edit(r, lab);
    const auto done = apply(lab, e);
    ASSERT_TRUE(done.has_value()) << seed << ": " << english(done.error());
    const Lab after = lab;
    ASSERT_TRUE(apply(lab, inverse(e)).has_value()) << seed;
    ASSERT_TRUE(lab == before) << seed;
    ASSERT_TRUE(apply(lab, e).has_value()) << seed;
    ASSERT_TRUE(lab == after) << seed;
  }
}

TEST(Edit, MergedDoesWhatBothDo) {
  for (int seed = 0; seed < test::scaled(10'000); ++seed) {
    Random r(static_cast<std::uint64_t>(seed));
    const Lab start = test::random_lab(r, 3);
    Lab lab = start;
    const Edit first = test::random_edit(r, lab);
    ASSERT_TRUE(apply(lab, first).has_value());
    const Edit second = test::random_edit(r, lab);
    ASSERT_TRUE(apply(lab, second).has_value());
    Lab other = start;
    const Edit both = merged(first, second);
    ASSERT_TRUE(apply(other, both).has_value()) << seed;
    ASSERT_TRUE(other == lab) << seed;
    ASSERT_TRUE(apply(other, inverse(both)).has_value()) << seed;
    ASSERT_TRUE(other == start) << seed;
  }
}

TEST(Edit, DifferenceTurnsOneLabIntoTheOther) {
  for (int seed = 0; seed < test::scaled(10'000); ++seed) {
    Random r(static_cast<std::uint64_t>(seed));
    const Lab from = test::random_lab(r, 4);
    Lab to = from;
    if (seed % 2 == 0) {
      for (int i = 0; i < 3; ++i) ASSERT_TRUE(apply(to, test::random_edit(r, to)).has_value());
    } else {
      to = test::random_lab(r, 4);
    }
    Lab lab = from;
    const Edit d = difference(from, to);
    const auto done = apply(lab, d);
    ASSERT_TRUE(done.has_value()) << seed << ": " << english(done.error());
    ASSERT_TRUE(lab == to) << seed;
    ASSERT_EQ(d.empty(), from == to) << seed;
    ASSERT_TRUE(difference(to, to).empty());
  }
}

TEST(Edit, RemovingAMachineTakesWhatCannotBeWithoutItAndNothingElse) {
  Lab lab = small_lab();
  const std::array<AnyId, 1> ids{lab.machines[0].id};
  ASSERT_TRUE(apply(lab, remove_elements(lab, ids)).has_value());
  EXPECT_TRUE(lab.machines.empty());
  EXPECT_TRUE(lab.cards.empty());
  EXPECT_TRUE(lab.promises.empty());
  ASSERT_EQ(lab.exercises.size(), 1U);
  EXPECT_TRUE(lab.exercises[0].on.empty());
}

// Many at once, as one after the other; and back.
TEST(Edit, RemovingTogetherIsRemovingOneByOne) {
  for (int seed = 0; seed < test::scaled(5'000); ++seed) {
    Random r(static_cast<std::uint64_t>(seed));
    const Lab start = test::random_lab(r, 5);
    std::vector<AnyId> ids;
    for (const Kind kind : kinds_in_document())
      for (std::size_t i = 0; store_of(kind).erase && i < store_of(kind).count(start); ++i)
        if (r.chance(15)) ids.push_back(store_of(kind).table->id(store_of(kind).at(start, i)));
    Lab together = start, singly = start;
    const Edit all = remove_elements(start, ids);
    ASSERT_TRUE(apply(together, all).has_value()) << seed;
    for (const AnyId id : ids)
      if (exists(singly, id)) {
        const std::array one{id};
        ASSERT_TRUE(apply(singly, remove_elements(singly, one)).has_value()) << seed;
      }
    ASSERT_TRUE(together == singly) << seed;
    ASSERT_TRUE(apply(together, inverse(all)).has_value()) << seed;
    ASSERT_TRUE(together == start) << seed;
  }
}

TEST(Edit, RemovingElementsThatNameEachOtherEnds) {
  Lab lab;
  for (const std::uint32_t n : {1U, 2U}) {
    Accepted a;
    a.id.number = n;
    a.places = {AcceptedId{3 - n}};
    lab.accepted.push_back(a);
  }
  const std::array<AnyId, 1> ids{lab.accepted[0].id};
  ASSERT_TRUE(apply(lab, remove_elements(lab, ids)).has_value());
  EXPECT_TRUE(lab.accepted.empty());
}

TEST(Edit, RefusesWhatDoesNotFitAndLeavesTheLabAlone) {
  const Lab lab = small_lab();
  const MachineId a = lab.machines[0].id;
  const MachineId t = lab.machines[1].id;
  const FieldInfo* memory = info<Machine>().field("memory");
  const FieldInfo* carrier = info<Machine>().field("carrier");
  const auto refused = [&lab](std::vector<Primitive> steps, std::string_view id) {
    Lab copy = lab;
    const auto done = apply(copy, Edit{say(kLabel), std::move(steps)});
    EXPECT_FALSE(done.has_value());
    if (!done) {
      EXPECT_EQ(done.error().message.id(), id);
    }
    EXPECT_TRUE(copy == lab);
  };
  const std::int64_t is = lab.machines[0].memory;
  refused({SetField{a, memory, is + 1, is}}, "edit-stale");
  refused({SetField{a, memory, is, std::int64_t{0}}}, "value-range");
  refused({SetField{a, memory, is, std::string("much")}}, "value-type");
  refused({SetField{MachineId{99}, memory, is, is + 1}}, "edit-no-element");
  refused({SetField{lab.cards[0].id, memory, is, is + 1}}, "edit-no-field");
  refused({SetField{a, carrier, Value(), AnyId(t)}}, "edit-cycle");
  refused({SetField{a, carrier, Value(), AnyId(MachineId{77})}}, "edit-dangling");
  refused({SetField{a, carrier, Value(), AnyId(lab.cards[0].id)}}, "value-kind");
  const auto machine = std::make_shared<const AnyElement>(lab.machines[0]);
  refused({InsertElement{0, machine}}, "edit-twice");
  refused({RemoveElement{0, machine}}, "edit-dangling");
  // The first step is fine, the second is not: both are taken back.
  refused({SetField{a, memory, is, is + 256}, RemoveElement{7, machine}}, "edit-no-element");
}

TEST(Edit, EveryFieldCanBeSetAndTakenBack) {
  Random r(7);
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    for (const FieldInfo& f : store.table->fields) {
      if (f.key == "carrier" || f.key == "base") continue;
      Lab lab = test::random_lab(r, 5);
      if (store.count(lab) == 0) continue;
      const AnyId id = store.table->id ? store.table->id(store.at(std::as_const(lab), 0)) : AnyId{kind, 0};
      const Value before = f.get(object_at(std::as_const(lab), id));
      Value after = before;
      for (int i = 0; i < 50 && after == before; ++i) after = test::random_value(r, lab, f);
      const Lab start = lab;
      const Edit e{say(kLabel), {SetField{id, &f, before, after}}};
      ASSERT_TRUE(apply(lab, e).has_value()) << store.table->noun.text << "." << f.key;
      EXPECT_TRUE(f.get(object_at(std::as_const(lab), id)) == after) << f.key;
      ASSERT_TRUE(apply(lab, inverse(e)).has_value());
      EXPECT_TRUE(lab == start) << f.key;
    }
  }
}

} // namespace
} // namespace snug
