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

} // namespace

Index::Index(const Lab& lab) : lab_(&lab) {
  slots_.resize(2 * element_count(lab) + kSpareSlots);
  number_machines();
  number_cards();
  number_list(lab.disks, [](const Disk&, std::uint32_t) {});
  number_others();
  resolve_machines();
  resolve_cards();
  read_disks();
  sort_carriers_first();
  for (std::uint32_t m = 0; m < machines_.size(); ++m)
    if (machines_[m].hypervisor) hypervisors_.push_back(m);
}

void Index::number_others() {
  const Lab& lab = *lab_;
  const auto only_number = [](const auto&, std::uint32_t) {};
  number_list(lab.volumes, only_number);
  number_list(lab.lans, only_number);
  number_list(lab.places, only_number);
  number_list(lab.roles, only_number);
  number_list(lab.segments, only_number);
  number_list(lab.shares, only_number);
  number_list(lab.exercises, only_number);
  number_list(lab.promises, only_number);
  number_list(lab.accepted, only_number);
  const auto key = [](const Other& o) { return std::tuple(o.number, o.kind, o.place); };
  std::sort(others_.begin(), others_.end(), [&](const Other& a, const Other& b) { return key(a) < key(b); });
}

// Calls read(element, place) for each on the way, so that a long list is passed once.
template <typename E, typename Read>
void Index::number_list(const std::vector<E>& list, Read read) {
  for (std::uint32_t p = 0; p < list.size(); ++p) {
    const std::uint32_t number = list[p].id.number;
    if (number < slots_.size() && slots_[number] == kFree && p <= kPlaceMask)
      slots_[number] = static_cast<Slot>(E::kind) << kPlaceBits | p;
    else
      others_.push_back({number, E::kind, p});
    read(list[p], p);
  }
}

std::uint32_t Index::other_place(std::uint32_t number, Kind kind) const {
  if (others_.empty()) return kNowhere;
  const auto it = std::lower_bound(others_.begin(), others_.end(), std::pair(number, kind),
                                   [](const Other& o, const std::pair<std::uint32_t, Kind>& k) {
                                     return std::pair(o.number, o.kind) < k;
                                   });
  return it != others_.end() && it->number == number && it->kind == kind ? it->place : kNowhere;
}

// Carrier and role are numbers until resolve_machines().
void Index::number_machines() {
  machines_.resize(lab_->machines.size());
  number_list(lab_->machines, [this](const Machine& m, std::uint32_t p) {
    MachineColumn& c = machines_[p];
    c.memory = m.memory;
    c.carrier = m.carrier.number;
    c.role = m.role.number;
    c.processors = m.processors;
    c.expected_percent = static_cast<std::uint8_t>(std::clamp(m.expected_percent, 0, 100));
    c.exposes_virtualization = m.expose_virtualization;
    c.is_64_bit = m.is_64_bit;
    c.memory_file = m.memory_file;
    c.has_name = !m.name.empty();
    c.has_notes = !m.notes.empty();
    c.has_initiator = !m.initiator_name.empty();
  });
}

void Index::resolve_machines() {
  for (MachineColumn& c : machines_) {
    c.carrier = place(MachineId{c.carrier});
    c.role = place(RoleId{c.role});
    c.hypervisor = c.role != kNowhere && lab_->roles[c.role].is_hypervisor;
  }
}

// Numbers until resolve_cards().
void Index::number_cards() {
  card_machine_.resize(lab_->cards.size());
  card_segment_.resize(lab_->cards.size());
  number_list(lab_->cards, [this](const Card& c, std::uint32_t p) {
    card_machine_[p] = c.machine.number;
    card_segment_[p] = c.segment.number;
  });
}

void Index::resolve_cards() {
  for (std::uint32_t& m : card_machine_) m = place(MachineId{m});
  for (std::uint32_t& s : card_segment_) s = place(SegmentId{s});
  cards_.fill(card_machine_, machines_.size());
}

void Index::read_disks() {
  std::vector<std::uint32_t> owner(lab_->disks.size());
  disk_columns_.resize(lab_->disks.size());
  for (std::size_t i = 0; i < owner.size(); ++i) {
    const Disk& d = lab_->disks[i];
    const std::uint32_t store = place(d.store);
    owner[i] = place(d.machine);
    disk_columns_[i] = {store == kNowhere ? AnyId{} : d.store, store, owner[i], d.provisioning, bool(d.base)};
  }
  disks_.fill(owner, machines_.size());
}

// Breadth first from the PC. Machines that are not reached carry each other in a circle: the first of them
// is put on the PC.
void Index::sort_carriers_first() {
  const auto count = static_cast<std::uint32_t>(machines_.size());
  std::vector<std::uint32_t> carrier(count);
  for (std::uint32_t m = 0; m < count; ++m) carrier[m] = machines_[m].carrier;
  guests_.fill(carrier, count + 1, count);
  order_.assign(guests_.of(count).begin(), guests_.of(count).end());
  order_.reserve(count);
  std::vector<bool> reached(count, false);
  std::uint32_t unseen = 0;
  const auto follow = [&](std::size_t from) {
    for (std::size_t i = from; i < order_.size(); ++i) {
      const std::uint32_t m = order_[i];
      reached[m] = true;
      MachineColumn& c = machines_[m];
      c.depth = c.carrier == kNowhere ? 0 : machines_[c.carrier].depth + 1;
      for (const std::uint32_t g : guests_.of(m)) {
        if (machines_[g].carrier != m) continue;
        c.hypervisor = c.has_guests = true;
        order_.push_back(g);
      }
    }
  };
  follow(0);
  if (order_.size() == count) return;
  while (order_.size() < count) {
    while (reached[unseen]) ++unseen;
    machines_[unseen].carrier = kNowhere;
    order_.push_back(unseen);
    follow(order_.size() - 1);
  }
  for (std::uint32_t m = 0; m < count; ++m) carrier[m] = machines_[m].carrier;
  guests_.fill(carrier, count + 1, count);
}

void Index::Groups::fill(std::span<const std::uint32_t> group_of, std::size_t groups, std::uint32_t rest) {
  const auto group = [&](std::size_t i) { return group_of[i] == kNowhere ? rest : group_of[i]; };
  // One place ahead: filling moves each start to where it belongs.
  start.assign(groups + 2, 0);
  for (std::size_t i = 0; i < group_of.size(); ++i)
    if (group(i) != kNowhere) ++start[group(i) + 2];
  for (std::size_t g = 2; g < start.size(); ++g) start[g] += start[g - 1];
  items.resize(start.back());
  for (std::uint32_t i = 0; i < group_of.size(); ++i)
    if (group(i) != kNowhere) items[start[group(i) + 1]++] = i;
  start.pop_back();
}

} // namespace snug
