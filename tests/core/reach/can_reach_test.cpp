#include "core/reach/can_reach.h"

#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct Asked {
  std::vector<CanReach> lines;
  Asked(const Lab& lab, std::string_view who, ExerciseId exercise = {}) {
    const Index index(lab);
    const AddressesInUse addresses(index);
    Reach reach(index, addresses, exercise);
    lines = can_reach(reach, index, machine(lab, who).id);
  }
  const CanReach* to(AnyId id) const {
    for (const CanReach& c : lines)
      if (c.to == id) return &c;
    return nullptr;
  }
};

TEST(CanReach, LinesAreTheNeedsAndTheOutside) {
  const Lab lab = sample("skerry-ferries");
  const Index index(lab);
  const Asked a(lab, "tickets-1");
  EXPECT_FALSE(needs_of(index, index.place(machine(lab, "tickets-1").id)).empty());
  ASSERT_FALSE(a.lines.empty());
  EXPECT_EQ(a.lines.back().to.kind, Kind::outside);
  EXPECT_EQ(a.lines.back().state, CanReach::State::yes);
  const CanReach* names = a.to(machine(lab, "beacon").id);
  ASSERT_NE(names, nullptr);
  EXPECT_EQ(names->state, CanReach::State::yes);
  EXPECT_EQ(english(names->words), "Passengers");
}

TEST(CanReach, WhatFailsSaysWhy) {
  Lab lab = sample("skerry-ferries");
  for (Card& c : lab.cards)
    if (c.machine == machine(lab, "tickets-1").id) c.connected = false;
  const Asked a(lab, "tickets-1");
  for (const CanReach& c : a.lines) {
    if (c.state == CanReach::State::unknown) continue;
    EXPECT_EQ(c.state, CanReach::State::no);
    EXPECT_NE(english(c.words).find("not connected"), std::string::npos) << english(c.words);
  }
  EXPECT_EQ(a.lines.back().state, CanReach::State::no);
}

TEST(CanReach, WhoIsOffIsNotAsked) {
  Lab lab = sample("skerry-ferries");
  const ExerciseId names = exercise(lab, "Names and logins");
  const Asked a(lab, "tickets-1", names);
  ASSERT_FALSE(a.lines.empty());
  for (const CanReach& c : a.lines) EXPECT_EQ(english(c.words), "off");
}

// An address that several have, as in the sketch of the window.
TEST(CanReach, ChanceIsSaid) {
  Lab lab = sample("skerry-ferries");
  Need need;
  need.service = "management";
  need.from = machine(lab, "deck-b").id;
  for (Machine& m : lab.machines)
    if (m.name == "wheelhouse") m.needs = {need};
  const Asked a(lab, "wheelhouse");
  const CanReach* deck = a.to(machine(lab, "deck-b").id);
  ASSERT_NE(deck, nullptr);
  EXPECT_TRUE(deck->state == CanReach::State::chance || deck->state == CanReach::State::unknown);
}

} // namespace
} // namespace snug::test
