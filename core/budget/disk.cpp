#include "core/budget/disk.h"

namespace snug {

namespace {

std::int64_t part_of(std::int64_t whole, std::int64_t percent) { return (whole * percent + 99) / 100; }

} // namespace

DiskDemand demand(Provisioning provisioning, std::int64_t size, std::int64_t expected_percent) {
  if (provisioning == Provisioning::full) return {size, size};
  return {part_of(size, expected_percent), size};
}

DiskDemand demand(const Disk& d) { return demand(d.provisioning, d.size, d.expected_percent); }

std::int64_t volume_budget(const Volume& v) { return v.free - part_of(v.size, v.keep_free_percent); }

std::uint32_t DiskPlan::place(const Index& index, const DiskColumn& d) const {
  if (d.store.kind == Kind::volume) return d.store_place;
  if (d.store.kind == Kind::share)
    return d.store_place + static_cast<std::uint32_t>(index.lab().volumes.size());
  return d.store.kind == Kind::disk ? disk_store[d.store_place] : kNowhere;
}

DiskPlan disk_plan(const Index& index) {
  const Lab& lab = index.lab();
  DiskPlan plan;
  plan.disk_store.assign(lab.disks.size(), kNowhere);
  plan.stores.reserve(lab.volumes.size() + lab.shares.size());
  for (const Volume& v : lab.volumes) plan.stores.push_back({v.id, volume_budget(v), 0, 0});
  for (const Share& s : lab.shares) plan.stores.push_back({s.id, s.size, 0, 0});
  constexpr std::uint32_t kIsStore = 0; // until it has its place
  for (const DiskColumn& d : index.disks())
    if (d.store.kind == Kind::disk) plan.disk_store[d.store_place] = kIsStore;
  for (std::size_t p = 0; p < plan.disk_store.size(); ++p) {
    if (plan.disk_store[p] != kIsStore) continue;
    plan.disk_store[p] = static_cast<std::uint32_t>(plan.stores.size());
    plan.stores.push_back({lab.disks[p].id, lab.disks[p].size, 0, 0});
  }
  for (const DiskColumn& d : index.disks()) {
    const std::uint32_t s = plan.place(index, d);
    if (s == kNowhere) continue;
    const DiskDemand need = demand(d.provisioning, d.size, d.expected_percent);
    plan.stores[s].expected += need.expected;
    plan.stores[s].worst += need.worst;
  }
  index.facts().each_machine(MachineMark::memory_file, [&](std::uint32_t m) {
    if (index.disks_of(m).empty()) return;
    const std::uint32_t s = plan.place(index, index.disks()[index.disks_of(m).front()]);
    if (s != kNowhere) plan.files.push_back({m, s});
  });
  return plan;
}

std::vector<DiskBudget> disk_budgets(const Index& index, const DiskPlan& plan,
                                     std::span<const std::uint8_t> running) {
  std::vector<DiskBudget> out = plan.stores;
  for (const DiskPlan::MemoryFile& f : plan.files) {
    if (!running[f.machine]) continue;
    out[f.store].expected += index.machines()[f.machine].memory;
    out[f.store].worst += index.machines()[f.machine].memory;
  }
  return out;
}

} // namespace snug
