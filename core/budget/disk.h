#pragma once
// What disks take on their stores (MODEL: Disk). All quantities are MiB.

#include "core/budget/budget.h"

namespace snug {

struct DiskDemand {
  std::int64_t expected = 0;
  std::int64_t worst = 0;
};
// Room that a disk takes: full disks whole; thin ones and the differences of copy-on-write ones as filled.
DiskDemand demand(const Disk&);
DiskDemand demand(Provisioning, std::int64_t size, std::int64_t expected_percent);
// Free room of a volume less what is kept free of its size; below 0 when that is used already.
std::int64_t volume_budget(const Volume&);

// What is the same in every exercise.
struct DiskPlan {
  struct MemoryFile {
    std::uint32_t machine = kNowhere; // place
    std::uint32_t store = 0;          // place in `stores`
  };
  std::vector<DiskBudget> stores;        // without memory files
  std::vector<std::uint32_t> disk_store; // for each of lab.disks: its own place in `stores`, else kNowhere
  std::vector<MemoryFile> files;

  // Place in `stores` of the store of a disk; kNowhere when it has none.
  std::uint32_t place(const Index&, const DiskColumn&) const;
};
DiskPlan disk_plan(const Index&);
// With the memory files of the machines that are `running`.
std::vector<DiskBudget> disk_budgets(const Index&, const DiskPlan&, std::span<const std::uint8_t> running);

} // namespace snug
