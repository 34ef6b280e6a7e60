#include "core/gesture/stores.h"

#include "core/budget/disk.h"
#include "core/text/hand_text.h"

#include <algorithm>

namespace snug {

namespace {

// A store that is there only where the carrier (kNowhere: the PC) is.
bool is_of(const Index& index, AnyId store, std::uint32_t carrier) {
  if (store.kind == Kind::volume) return carrier == kNowhere;
  const Disk* disk = store.kind == Kind::disk ? index.disk(DiskId{store.number}) : nullptr;
  return disk && index.place(disk->machine) == carrier && carrier != kNowhere;
}

bool is_part_of_a_copy(const Lab& lab, const Disk& disk) {
  return disk.base ||
         std::any_of(lab.disks.begin(), lab.disks.end(), [&](const Disk& d) { return d.base == disk.id; });
}

// Room on each store of a carrier: MiB that it is not expected to hold yet.
std::vector<std::pair<AnyId, std::int64_t>> rooms(const Index& index, std::uint32_t carrier) {
  const Lab& lab = index.lab();
  std::vector<std::pair<AnyId, std::int64_t>> out;
  if (carrier == kNowhere)
    for (const Volume& v : lab.volumes) out.emplace_back(v.id, volume_budget(v));
  else
    for (const std::uint32_t d : index.disks_of(carrier))
      out.emplace_back(lab.disks[d].id, lab.disks[d].size);
  for (const DiskBudget& b : disk_plan(index).stores)
    for (auto& [store, room] : out)
      if (store == b.of) room -= b.expected;
  return out;
}

} // namespace

DisksAlong disks_along(const Index& index, std::span<const MachineId> ids, MachineId to) {
  const Lab& lab = index.lab();
  const std::uint32_t carrier = index.place(to);
  DisksAlong out;
  std::int64_t need = 0;
  for (const MachineId id : ids) {
    const std::uint32_t m = index.place(id);
    if (index.carrier_of(m) == carrier) continue;
    for (const std::uint32_t d : index.disks_of(m)) {
      const Disk& disk = lab.disks[d];
      if (!is_of(index, disk.store, index.carrier_of(m)) || is_part_of_a_copy(lab, disk)) continue;
      out.disks.push_back(disk.id);
      need += demand(disk).expected;
    }
  }
  if (out.disks.empty()) return out;
  auto fitting = rooms(index, carrier);
  std::erase_if(fitting, [need](const auto& room) { return room.second < need; });
  if (fitting.size() != 1) return {};
  out.store = fitting.front().first;
  return out;
}

std::vector<Message> disks_say(const Lab& before, const Lab& after, std::span<const MachineId> ids) {
  std::vector<DiskId> moved;
  AnyId store;
  for (const Disk& was : before.disks) {
    if (std::find(ids.begin(), ids.end(), was.machine) == ids.end()) continue;
    const Disk* now = find<Disk>(after, was.id);
    if (!now || now->store == was.store) continue;
    moved.push_back(was.id);
    store = now->store;
  }
  if (moved.empty()) return {};
  const std::string onto = name_of(after, store);
  if (moved.size() == 1) return {say(text::hand_disk_along, name_of(after, moved.front()), onto)};
  return {say(text::hand_disks_along, Count{static_cast<std::int64_t>(moved.size())}, onto)};
}

} // namespace snug
