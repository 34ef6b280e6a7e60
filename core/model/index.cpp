#include "core/model/index.h"

#include <algorithm>
#include <tuple>

namespace snug {

namespace {

constexpr std::size_t kSpareSlots = 1024;

std::size_t element_count(const Lab& lab) {
  return lab.volumes.size() + lab.lans.size() + lab.places.size() + lab.roles.size() + lab.segments.size() +
         lab.machines.size() + lab.cards.size() + lab.disks.size() + lab.shares.size() +
         lab.exercises.size() + lab.promises.size() + lab.accepted.size();
}

// Numbers stay below next_id in every lab that was read or edited.
std::size_t slot_count(const Lab& lab) {
  const std::size_t count = element_count(lab);
  return std::min(2 * count + kSpareSlots, std::max<std::size_t>(lab.facts.next_id, count));
}

} // namespace

// Cards refer to machines and segments, so those are numbered first.
Index::Index(const Lab& lab) : lab_(&lab) {
  slots_.resize(slot_count(lab));
  number_parts();
  read_machines();
  read_cards();
  read_disks();
  sort_carriers_first();
  collect_hypervisors();
}

template <typename E>
void Index::number_list(const std::vector<E>& list) {
  for (std::uint32_t p = 0; p < list.size(); ++p) number(list[p].id.number, E::kind, p);
}

void Index::number_parts() {
  const Lab& lab = *lab_;
  number_list(lab.volumes);
  number_list(lab.lans);
  number_list(lab.places);
  number_list(lab.roles);
  number_list(lab.segments);
  number_list(lab.shares);
  number_list(lab.exercises);
  number_list(lab.promises);
  number_list(lab.accepted);
  settle_others();
}

void Index::note_other(Other other) { others_.push_back(other); }

void Index::settle_others() {
  const auto key = [](const Other& o) { return std::tuple(o.number, o.kind, o.place); };
  std::sort(others_.begin(), others_.end(), [&](const Other& a, const Other& b) { return key(a) < key(b); });
  settled_ = others_.size();
}

std::uint32_t Index::other_place(std::uint32_t number, Kind kind) const {
  const auto end = others_.begin() + static_cast<std::ptrdiff_t>(settled_);
  const auto it = std::lower_bound(others_.begin(), end, std::pair(number, kind),
                                   [](const Other& o, const std::pair<std::uint32_t, Kind>& k) {
                                     return std::pair(o.number, o.kind) < k;
                                   });
  return it != end && it->number == number && it->kind == kind ? it->place : kNowhere;
}

// Disks may lie on disks, so stores get their places last.
void Index::read_disks() {
  const std::vector<Disk>& disks = lab_->disks;
  std::vector<std::uint32_t> owner(disks.size());
  disk_columns_.reserve(disks.size());
  for (std::uint32_t p = 0; p < disks.size(); ++p) {
    const Disk& d = disks[p];
    number(d.id.number, Kind::disk, p);
    owner[p] = place(d.machine);
    disk_columns_.push_back(
        {d.size, d.store, kNowhere, owner[p], d.expected_percent, d.provisioning, bool(d.base)});
  }
  settle_others();
  DiskKinds kinds;
  for (DiskColumn& d : disk_columns_) {
    d.store_place = place(d.store);
    if (d.store_place == kNowhere) d.store = {};
    kinds.homeless |= d.store_place == kNowhere;
    kinds.copies |= d.provisioning == Provisioning::copy_on_write;
    kinds.bases |= d.has_base;
  }
  disk_kinds_ = kinds;
  disks_ = Groups(owner, static_cast<std::uint32_t>(machines_.size()));
}

// Breadth first from the PC. Machines that are not reached carry each other in a circle: the first of them
// is put on the PC.
void Index::sort_carriers_first() {
  const auto count = static_cast<std::uint32_t>(machines_.size());
  guests_ = Groups(carrier_, count);
  order_.reserve(count);
  order_.assign(guests_.of(count).begin(), guests_.of(count).end());
  std::vector<std::uint8_t> reached(count, 0);
  follow(0, reached);
  if (order_.size() == count) return;
  for (std::uint32_t unseen = 0; order_.size() < count; ++unseen) {
    if (reached[unseen]) continue;
    machines_[unseen].carrier = carrier_[unseen] = kNowhere;
    order_.push_back(unseen);
    follow(order_.size() - 1, reached);
  }
  guests_ = Groups(carrier_, count);
}

void Index::collect_hypervisors() {
  for (const std::uint32_t m : order_)
    if (machines_[m].hypervisor) nested_.push_back(m);
  hypervisors_ = nested_;
  if (!std::is_sorted(hypervisors_.begin(), hypervisors_.end()))
    std::sort(hypervisors_.begin(), hypervisors_.end());
  for (const std::uint32_t h : hypervisors_) facts_.machine_marks[h] |= MachineMark::hypervisor;
  if (!hypervisors_.empty()) facts_.any_machine |= MachineMark::hypervisor;
}

void Index::follow(std::size_t from, std::vector<std::uint8_t>& reached) {
  for (std::size_t i = from; i < order_.size(); ++i) {
    const std::uint32_t m = order_[i];
    reached[m] = 1;
    MachineColumn& c = machines_[m];
    c.depth = c.carrier == kNowhere ? 0 : machines_[c.carrier].depth + 1;
    for (const std::uint32_t g : guests_.of(m)) {
      if (carrier_[g] != m) continue;
      c.hypervisor = c.has_guests = true;
      order_.push_back(g);
    }
  }
}

} // namespace snug
