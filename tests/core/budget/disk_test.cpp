#include "core/budget/disk.h"

#include "tests/support/ship_lab.h"

#include <gtest/gtest.h>

namespace snug {
namespace {

using test::Ship;

TEST(DiskDemand, ByProvisioning) {
  Disk d;
  d.size = 1001;
  d.expected_percent = 50;
  EXPECT_EQ(demand(d).expected, 501); // rounded up
  EXPECT_EQ(demand(d).worst, 1001);
  d.provisioning = Provisioning::copy_on_write;
  EXPECT_EQ(demand(d).expected, 501);
  d.provisioning = Provisioning::full;
  EXPECT_EQ(demand(d).expected, 1001);
  EXPECT_EQ(demand(d).worst, 1001);
}

TEST(VolumeBudget, KeepsAShareOfItsSizeFree) {
  Volume v;
  v.size = 1005;
  v.free = 500;
  EXPECT_EQ(volume_budget(v), 500 - 101);
  v.free = 50;
  EXPECT_EQ(volume_budget(v), 50 - 101);
}

TEST(DiskBudgets, VolumesSharesThenDisksThatAreStores) {
  Ship ship;
  const MachineId guest = ship.add_machine("log", ship.application, 1024, ship.deck_b);
  ship.add_disk(guest, 8192, ship.deck_b_disk);
  const Index index(ship.lab);
  const DiskPlan plan = disk_plan(index);
  ASSERT_EQ(plan.stores.size(), 3U);
  EXPECT_EQ(plan.stores[0].of, AnyId(ship.fast));
  EXPECT_EQ(plan.stores[1], (DiskBudget{ship.cargo, 102400, 10240, 20480}));
  EXPECT_EQ(plan.stores[2], (DiskBudget{ship.deck_b_disk, 40960, 4096, 8192}));
}

TEST(DiskBudgets, AMemoryFileCountsWhileItsMachineRuns) {
  Ship ship;
  ship.machine(ship.tickets).memory_file = true;
  const Index index(ship.lab);
  const DiskPlan plan = disk_plan(index);
  const auto on = disk_budgets(index, plan, running(index, ship.all_hands));
  const auto off = disk_budgets(index, plan, running(index, ship.quiet));
  EXPECT_EQ(on[1].expected, off[1].expected + 2048);
  EXPECT_EQ(on[1].worst, off[1].worst + 2048);
  EXPECT_EQ(on[0], off[0]);
}

} // namespace
} // namespace snug
