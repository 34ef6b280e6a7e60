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
  number_elements();
  read_machines();
  read_parts();
  sort_carriers_first();
  for (std::uint32_t m = 0; m < machines_.size(); ++m)
    if (machines_[m].hypervisor) hypervisors_.push_back(m);
}

void Index::number_elements() {
  const Lab& lab = *lab_;
  slots_.resize(2 * element_count(lab) + kSpareSlots);
  number_list(lab.volumes);
  number_list(lab.lans);
  number_list(lab.places);
  number_list(lab.roles);
  number_list(lab.segments);
  number_list(lab.machines);
  number_list(lab.cards);
  number_list(lab.disks);
  number_list(lab.shares);
  number_list(lab.exercises);
  number_list(lab.promises);
  number_list(lab.accepted);
  const auto key = [](const Other& o) { return std::tuple(o.number, o.kind, o.place); };
  std::sort(others_.begin(), others_.end(), [&](const Other& a, const Other& b) { return key(a) < key(b); });
}

template <typename E>
void Index::number_list(const std::vector<E>& list) {
  for (std::uint32_t p = 0; p < list.size(); ++p) {
    const std::uint32_t number = list[p].id.number;
    if (number < slots_.size() && slots_[number].kind == Kind::none)
      slots_[number] = {p, E::kind};
    else
      others_.push_back({number, E::kind, p});
  }
}

std::uint32_t Index::place_of_number(std::uint32_t number, Kind kind) const {
  if (number < slots_.size() && slots_[number].kind == kind) return slots_[number].place;
  const auto it = std::lower_bound(others_.begin(), others_.end(), std::pair(number, kind),
                                   [](const Other& o, const std::pair<std::uint32_t, Kind>& k) {
                                     return std::pair(o.number, o.kind) < k;
                                   });
  return it != others_.end() && it->number == number && it->kind == kind ? it->place : kNowhere;
}

void Index::read_machines() {
  machines_.resize(lab_->machines.size());
  for (std::size_t i = 0; i < machines_.size(); ++i) {
    const Machine& m = lab_->machines[i];
    MachineColumn& c = machines_[i];
    c.memory = m.memory;
    c.carrier = place(m.carrier);
    c.role = place(m.role);
    c.processors = m.processors;
    c.expected_percent = static_cast<std::uint8_t>(std::clamp(m.expected_percent, 0, 100));
    c.hypervisor = c.role != kNowhere && lab_->roles[c.role].is_hypervisor;
    c.exposes_virtualization = m.expose_virtualization;
    c.is_64_bit = m.is_64_bit;
    c.memory_file = m.memory_file;
    c.has_name = !m.name.empty();
    c.has_notes = !m.notes.empty();
    c.has_initiator = !m.initiator_name.empty();
  }
}

void Index::read_parts() {
  card_machine_.resize(lab_->cards.size());
  card_segment_.resize(lab_->cards.size());
  for (std::size_t i = 0; i < lab_->cards.size(); ++i) {
    card_machine_[i] = place(lab_->cards[i].machine);
    card_segment_[i] = place(lab_->cards[i].segment);
  }
  std::vector<std::uint32_t> owner(lab_->disks.size());
  disk_columns_.resize(lab_->disks.size());
  for (std::size_t i = 0; i < owner.size(); ++i) {
    const Disk& d = lab_->disks[i];
    const std::uint32_t store = place(d.store);
    owner[i] = place(d.machine);
    disk_columns_[i] = {store == kNowhere ? AnyId{} : d.store, store, owner[i], d.provisioning, bool(d.base)};
  }
  cards_.fill(card_machine_, machines_.size());
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
  start.assign(groups + 1, 0);
  const auto group = [&](std::size_t i) { return group_of[i] == kNowhere ? rest : group_of[i]; };
  for (std::size_t i = 0; i < group_of.size(); ++i)
    if (group(i) != kNowhere) ++start[group(i) + 1];
  for (std::size_t g = 0; g < groups; ++g) start[g + 1] += start[g];
  items.resize(start[groups]);
  std::vector<std::uint32_t> next(start.begin(), start.end() - 1);
  for (std::uint32_t i = 0; i < group_of.size(); ++i)
    if (group(i) != kNowhere) items[next[group(i)]++] = i;
}

} // namespace snug
