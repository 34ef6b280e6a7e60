#include "core/findings/stores.h"

#include <algorithm>

namespace snug {

std::uint32_t disk_below(const Index& index, std::uint32_t disk) {
  const DiskColumn& d = index.disks()[disk];
  if (d.store.kind == Kind::disk) return d.store_place;
  if (d.store.kind == Kind::share) return index.place(index.lab().shares[d.store_place].disk);
  return kNowhere;
}

std::uint32_t volume_below(const Index& index, std::uint32_t disk) {
  std::size_t steps = 0;
  while (disk != kNowhere && steps++ <= index.disks().size()) {
    const DiskColumn& d = index.disks()[disk];
    if (d.store.kind == Kind::volume) return d.store_place;
    disk = disk_below(index, disk);
  }
  return kNowhere;
}

AnyId only_store_for(const Index& index, std::uint32_t machine) {
  const Lab& lab = index.lab();
  const std::uint32_t carrier = index.carrier_of(machine);
  if (carrier == kNowhere) return lab.volumes.size() == 1 ? AnyId(lab.volumes.front().id) : AnyId{};
  const auto disks = index.disks_of(carrier);
  return disks.size() == 1 ? AnyId(lab.disks[disks.front()].id) : AnyId{};
}

std::vector<ShareUser> share_users(const Index& index) {
  std::vector<ShareUser> out;
  if (index.lab().shares.empty()) return out;
  for (const DiskColumn& d : index.disks())
    if (d.store.kind == Kind::share && d.machine != kNowhere) out.push_back({d.machine, d.store_place});
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

std::uint32_t opener(const Index& index, std::uint32_t machine) {
  const std::uint32_t carrier = index.carrier_of(machine);
  return carrier == kNowhere ? machine : carrier;
}

std::string share_name(const Context& c, const Share& s) { return s.name.empty() ? c.name(s.id) : s.name; }

} // namespace snug
