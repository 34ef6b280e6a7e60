#include "tests/support/rule_world.h"

#include <gtest/gtest.h>

namespace snug::test {

namespace {

using enum Severity;
using Ids = std::vector<AnyId>;

// "vault" serves the disk of guest, which runs inside rack, on a segment of its own.
struct Vault {
  explicit Vault(World& w) : world(w) {
    store = w.add_segment("Store", "172.22.60.0/24");
    vault = w.add_machine("vault");
    vault_store = w.add_card(vault, store, "172.22.60.23");
    w.card(vault_store).published = false;
    const DiskId bay = add_disk(vault, {}, 102400);
    Share s;
    s.id = share = ShareId{w.lab.facts.next_id++};
    s.machine = vault;
    s.name = "bay";
    s.disk = bay;
    s.size = 51200;
    s.clients = {w.rack, w.desk};
    s.target = "/bay";
    s.protocol = ShareProtocol::nfs;
    w.lab.shares.push_back(std::move(s));
    add_disk(w.guest, share, 8192);
  }
  DiskId add_disk(MachineId machine, AnyId on, std::int64_t size) const {
    Disk d;
    d.id = DiskId{world.lab.facts.next_id++};
    d.machine = machine;
    d.size = size;
    d.store = on;
    world.lab.disks.push_back(d);
    return d.id;
  }
  // rack's own card there, so that all is well.
  CardId plug_rack() {
    const CardId card = world.add_card(world.rack, store, "172.22.60.31");
    world.card(card).published = false;
    return card;
  }
  World& world;
  SegmentId store;
  MachineId vault;
  CardId vault_store;
  ShareId share;
};

std::vector<std::string> found_in(const World& w) { return places_of(w.lab, "store-unreachable"); }

TEST(StoreReachRules, NothingWhereTheHypervisorIsANeighbour) {
  World w;
  Vault v(w);
  v.plug_rack();
  EXPECT_TRUE(found_in(w).empty());
  w.lab.shares.front().card = v.vault_store;
  EXPECT_TRUE(found_in(w).empty());
}

TEST(StoreReachRules, EachFiresAloneAndItsFixMendsIt) {
  const std::vector<RuleCase> cases{
      {"store-unreachable", error, false, // not on the segment, and no way to it
       [](World& w) {
         const Vault v(w);
         return Ids{w.rack, v.share};
       }},
      {"store-unreachable", error, true, // the cable is out
       [](World& w) {
         Vault v(w);
         w.card(v.plug_rack()).connected = false;
         return Ids{w.rack, v.share};
       }},
      {"store-unreachable", caution, false, // two have the address
       [](World& w) {
         Vault v(w);
         v.plug_rack();
         w.add_card(w.add_machine("twin"), v.store, "172.22.60.23");
         return Ids{w.rack, v.share};
       }},
      {"store-unreachable", error, false, // of two cards the one that carries the share counts
       [](World& w) {
         const Vault v(w);
         w.add_card(v.vault, w.deck, "172.22.10.23");
         w.lab.shares.front().card = v.vault_store;
         return Ids{w.rack, v.share};
       }},
      {"store-unreachable", error, false, // a share on a card without address
       [](World& w) {
         Vault v(w);
         v.plug_rack();
         w.card(v.vault_store).addresses.clear();
         w.add_card(v.vault, w.deck, "172.22.10.23");
         w.lab.shares.front().card = v.vault_store;
         return Ids{w.rack, v.share};
       }},
      {"store-unreachable", error,
       true, // a machine on the PC opens its disk itself; a default route is missing
       [](World& w) {
         Vault v(w);
         v.plug_rack();
         const CardId c = w.add_card(w.router, v.store, "172.22.60.1");
         w.card(c).forwards4 = true;
         w.segment(v.store).gateway4 = address("172.22.60.1");
         v.add_disk(w.desk, v.share, 8192);
         return Ids{w.desk, v.share};
       }}};
  for (const RuleCase& c : cases) check_case(c);
}

TEST(StoreReachRules, AnyCardDoesWhereTheShareNamesNone) {
  World w;
  const Vault v(w);
  w.add_card(v.vault, w.deck, "172.22.10.23");
  EXPECT_TRUE(found_in(w).empty());
}

TEST(StoreReachRules, OnlyExercisesCountInWhichBothRun) {
  World w;
  const Vault v(w);
  const auto exercise = [&w](std::vector<MachineId> on) {
    Exercise e;
    e.id = ExerciseId{w.lab.facts.next_id++};
    e.on = std::move(on);
    w.lab.exercises.push_back(e);
  };
  exercise({w.rack, w.guest, v.vault});
  exercise({w.rack, w.guest}); // its store is off: store-off
  exercise({w.rack, v.vault}); // nobody's disk is wanted
  const Analysis a(w.lab);
  int n = 0;
  for (const Finding& f : a.findings()) {
    if (f.rule->id != "store-unreachable") continue;
    ++n;
    EXPECT_FALSE(f.when.always);
    EXPECT_TRUE(f.when.everything_on);
    EXPECT_TRUE(f.when.exercises[0]);
    EXPECT_FALSE(f.when.exercises[1]);
    EXPECT_FALSE(f.when.exercises[2]);
    EXPECT_EQ(english(f.message), "rack does not reach share bay of vault, where disks of guest lie");
  }
  EXPECT_EQ(n, 1);
}

// Disks are drawn before networks are: that is no mistake yet.
TEST(StoreReachRules, NothingWhereNeitherHasACard) {
  World w;
  const Vault v(w);
  std::erase_if(w.lab.cards, [&](const Card& c) { return c.machine == w.rack || c.machine == v.vault; });
  EXPECT_TRUE(found_in(w).empty());
}

TEST(StoreReachRules, WhatAMachineServesItselfIsNotAsked) {
  World w;
  Vault v(w);
  v.plug_rack();
  v.add_disk(v.vault, v.share, 8192);
  w.card(v.vault_store).connected = true;
  EXPECT_TRUE(found_in(w).empty());
}

} // namespace
} // namespace snug::test
