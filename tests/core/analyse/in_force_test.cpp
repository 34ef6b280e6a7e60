// What a field that is empty says it stands for is what the analysis reckons with.

#include "core/analyse/in_force.h"

#include "core/budget/defaults.h"
#include "core/budget/memory.h"
#include "core/model/field_text.h"
#include "core/model/store.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

const FieldInfo& field(Kind kind, std::string_view key) {
  for (const FieldInfo& f : info_of(kind).fields)
    if (f.key == key) return f;
  throw std::invalid_argument(std::string(key));
}

std::string said(const Lab& lab, AnyId id, std::string_view key) {
  const Analysis a(lab);
  const FieldInfo& f = field(id.kind, key);
  const auto value = in_force(a, id, f);
  return value ? line_of(f, *value) : std::string("nothing");
}

TEST(InForce, OfThePcIsWhatTheBudgetTakes) {
  Lab lab = test::sample("skerry-ferries");
  const AnyId pc{Kind::pc, 0};
  lab.pc.reserved = lab.pc.keep_free = std::nullopt;
  lab.pc.installed = 16 * 1024;
  EXPECT_EQ(said(lab, pc, "reserved"), "4 GiB");
  EXPECT_EQ(said(lab, pc, "keep_free"), "1 GiB");
  lab.pc.installed = 64 * 1024;
  EXPECT_EQ(said(lab, pc, "reserved"), "8 GiB");
  EXPECT_EQ(said(lab, pc, "keep_free"), "2 GiB");
  lab.pc.reserved = 5 * 1024;
  EXPECT_EQ(said(lab, pc, "reserved"), "nothing") << "what was typed is in the field";
}

TEST(InForce, OfASegmentIsWhatItsMachinesMeet) {
  Lab lab = test::sample("skerry-ferries");
  Segment& s = lab.segments.front();
  s.type = SegmentKind::nat;
  s.prefix4 = *parse_prefix("192.0.2.0/24");
  s.gateway4 = s.translator4 = std::nullopt;
  EXPECT_EQ(said(lab, s.id, "translator4"), "192.0.2.1");
  EXPECT_EQ(said(lab, s.id, "gateway4"), "192.0.2.1");
  s.type = SegmentKind::isolated;
  EXPECT_EQ(said(lab, s.id, "translator4"), "nothing");
  EXPECT_EQ(said(lab, s.id, "name"), "nothing") << "has nothing else";
  s.type = SegmentKind::bridged;
  s.prefix4 = std::nullopt;
  Lan& lan = lab.lans.empty() ? lab.lans.emplace_back() : lab.lans.front();
  if (!lan.id) lan.id = LanId{lab.facts.next_id++};
  lan.prefix4 = *parse_prefix("198.51.100.0/24");
  s.lan = lan.id;
  EXPECT_EQ(said(lab, s.id, "prefix4"), "198.51.100.0/24");
}

TEST(InForce, OfAHypervisorAndACard) {
  Lab lab = test::sample("skerry-ferries");
  const Machine& room = test::machine(lab, "deck-a");
  const auto place = static_cast<std::uint32_t>(&room - lab.machines.data());
  const std::int64_t own = footprint(Analysis(lab).index(), place);
  ASSERT_GT(own, 0);
  const FieldInfo& f = field(Kind::machine, "footprint");
  lab.machines[place].footprint = std::nullopt;
  EXPECT_EQ(*in_force(Analysis(lab), room.id, f)->as<std::int64_t>(), own);
  EXPECT_EQ(said(lab, test::machine(lab, "tickets-1").id, "footprint"), "nothing") << "is no hypervisor";
  Card& card = lab.cards.front();
  card.mtu = std::nullopt;
  ASSERT_TRUE(card.segment);
  const Index index(lab);
  lab.segments[index.place(card.segment)].mtu = 9000;
  EXPECT_EQ(said(lab, card.id, "mtu"), "9000");
}

} // namespace
} // namespace snug
