#include "core/report/changes.h"

#include "core/edit/build.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

namespace snug {
namespace {

Lab two_decks() {
  Lab lab;
  EditBuilder b(lab);
  Segment s;
  s.name = "Steering";
  const SegmentId steering = b.add(s);
  s.name = "Cargo";
  b.add(s);
  Machine m;
  m.name = "deck-a";
  const MachineId a = b.add(m);
  m.name = "deck-b";
  b.add(m);
  m.name = "tickets-1";
  m.carrier = a;
  const MachineId t = b.add(m);
  Card c;
  c.machine = t;
  c.segment = steering;
  b.add(c);
  EXPECT_TRUE(apply(lab, std::move(b).take({})).has_value());
  return lab;
}

TEST(Changes, SpeakTheTradesWordsWithNames) {
  const Lab from = two_decks();
  Lab to = from;
  EditBuilder b(to);
  b.set(to.machines[2].id, "carrier", AnyId(to.machines[1].id));
  b.set(to.machines[0].id, "memory", std::int64_t{10240});
  b.set(to.cards[0].id, "segment", AnyId(to.segments[1].id));
  Machine m;
  m.name = "manifest";
  b.add(m);
  ASSERT_TRUE(apply(to, std::move(b).take({})).has_value());
  EXPECT_EQ(changes_text(changes(from, to)), "changed  deck-a: memory from 1.0 GiB to 10.0 GiB\n"
                                             "changed  tickets-1: carrier from deck-a to deck-b\n"
                                             "added    machine manifest\n"
                                             "changed  tickets-1 card 1: segment from Steering to Cargo\n");
  EXPECT_EQ(changes_text(changes(to, from)).substr(0, 26), "removed  machine manifest\n");
  const auto j = nlohmann::json::parse(changes_json(changes(from, to)));
  ASSERT_EQ(j["changes"].size(), 4U);
  EXPECT_EQ(j["changes"][0]["before"], "1.0 GiB");
  EXPECT_EQ(changes_text(changes(from, from)), "no differences\n");
  EXPECT_TRUE(nlohmann::json::parse(changes_json({}))["changes"].empty());
}

// The numbers by which a machine has its place; neighbours_moved_test.cpp is about those.
bool is_place(const SetField& s) {
  return s.id.kind == Kind::machine && (s.field->key == "order" || s.field->key == "band");
}

// The list agrees with the edit primitives: what changes() says nothing of is order, or the program's
// bookkeeping.
TEST(Changes, SayNothingOnlyWhereTheDifferenceIsOrderOrBookkeeping) {
  for (int seed = 0; seed < test::scaled(3000); ++seed) {
    test::Random r(static_cast<std::uint64_t>(seed));
    const Lab from = test::random_lab(r, 3);
    Lab to = from;
    ASSERT_TRUE(apply(to, test::random_edit(r, to)).has_value());
    std::size_t fields = 0;
    std::size_t added = 0;
    std::size_t removed = 0;
    for (const Primitive& p : difference(from, to).steps) {
      if (const auto* s = std::get_if<SetField>(&p))
        fields += s->field->owner == Owner::person && !is_place(*s) ? 1 : 0;
      if (const auto* i = std::get_if<InsertElement>(&p)) added += exists(from, id_of(*i->element)) ? 0 : 1;
      if (const auto* d = std::get_if<RemoveElement>(&p)) removed += exists(to, id_of(*d->element)) ? 0 : 1;
    }
    const auto list = changes(from, to);
    const auto count = [&list](ChangeKind k) {
      return static_cast<std::size_t>(
          std::count_if(list.begin(), list.end(), [k](const Change& c) { return c.kind == k; }));
    };
    ASSERT_EQ(count(ChangeKind::added), added) << seed;
    ASSERT_EQ(count(ChangeKind::removed), removed) << seed;
    ASSERT_GE(count(ChangeKind::changed), fields) << seed;
  }
}

} // namespace
} // namespace snug
