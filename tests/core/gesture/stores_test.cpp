#include "core/gesture/stores.h"

#include "core/gesture/move.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

namespace snug::test {
namespace {

struct Stores {
  Lab lab = sample("skerry-ferries");
  MachineId guest = machine(lab, "tickets-1").id, from = machine(lab, "deck-a").id,
            to = machine(lab, "deck-b").id;
  Stores() { disk_of(guest).store = disk_of(from).id; }
  Disk& disk_of(MachineId m) {
    return *std::find_if(lab.disks.begin(), lab.disks.end(), [m](const Disk& d) { return d.machine == m; });
  }
  DisksAlong along(MachineId where) const {
    const std::vector<MachineId> one{guest};
    return disks_along(Index(lab), one, where);
  }
};

TEST(DisksAlong, GoToTheOneStoreOfTheNewCarrier) {
  Stores s;
  EXPECT_EQ(s.along(s.to).store, AnyId(s.disk_of(s.to).id));
  EXPECT_EQ(s.along(s.to).disks, std::vector<DiskId>{s.disk_of(s.guest).id});
  EXPECT_EQ(s.along({}).store, AnyId(s.lab.volumes.front().id)) << "to the PC";
}

TEST(DisksAlong, StayWhereNoneOrSeveralStoresFit) {
  Stores s;
  Disk second = s.disk_of(s.to);
  second.id.number = s.lab.facts.next_id++;
  s.lab.disks.push_back(second);
  EXPECT_FALSE(s.along(s.to).store);
  s.lab.disks.pop_back();
  s.disk_of(s.to).size = 1024;
  EXPECT_FALSE(s.along(s.to).store) << "too small";
}

TEST(DisksAlong, StayOnASharedStoreAndWithTheirBase) {
  Stores s;
  s.disk_of(s.guest).store = s.lab.shares.front().id;
  EXPECT_TRUE(s.along(s.to).disks.empty());
  s.disk_of(s.guest).store = s.disk_of(s.from).id;
  s.disk_of(s.guest).base = s.disk_of(s.from).id;
  EXPECT_TRUE(s.along(s.to).disks.empty());
}

TEST(MoveMachines, MovesTheDiskInTheSameEditAndSaysSo) {
  Stores s;
  const std::vector<MachineId> one{s.guest};
  const auto edit = move_machines(s.lab, one, {s.to, 0, {}});
  ASSERT_TRUE(edit);
  Lab after = s.lab;
  ASSERT_TRUE(apply(after, *edit));
  const Disk& now = *find<Disk>(after, s.disk_of(s.guest).id);
  EXPECT_EQ(now.store, AnyId(s.disk_of(s.to).id));
  const auto said = disks_say(s.lab, after, one);
  ASSERT_EQ(said.size(), 1U);
  EXPECT_EQ(english(said.front()),
            name_of(after, now.id) + " goes along, onto " + name_of(after, s.disk_of(s.to).id));
  ASSERT_TRUE(apply(after, inverse(*edit)));
  EXPECT_EQ(after, s.lab);
  EXPECT_TRUE(disks_say(s.lab, s.lab, one).empty());
}

} // namespace
} // namespace snug::test
