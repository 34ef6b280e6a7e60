#include "core/model/index.h"

#include "core/model/names.h"

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

std::int64_t usual_footprint(const Lab& lab, std::uint32_t role) {
  if (role == kNowhere) return lab.rules.default_footprint;
  const Role& r = lab.roles[role];
  const std::int64_t own = lab.facts.sizes == SizeSet::lean ? r.lean_footprint : r.current_footprint;
  return own > 0 ? own : lab.rules.default_footprint;
}

} // namespace

// Cards refer to machines and segments, so those are numbered first.
Index::Index(const Lab& lab) : lab_(&lab) {
  slots_.resize(2 * element_count(lab) + kSpareSlots);
  number_parts();
  read_machines();
  read_cards();
  read_disks();
  sort_carriers_first();
  for (std::uint32_t m = 0; m < machines_.size(); ++m)
    if (machines_[m].hypervisor) {
      hypervisors_.push_back(m);
      facts_.machine_marks[m] |= MachineMark::hypervisor;
      facts_.any_machine |= MachineMark::hypervisor;
    }
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

// The carrier is its number until all machines have their places.
void Index::read_machine(const Machine& m, std::uint32_t p) {
  MachineColumn& c = machines_[p];
  c.memory = m.memory;
  c.carrier = m.carrier.number;
  c.role = place(m.role);
  c.processors = m.processors;
  c.expected_percent = static_cast<std::uint8_t>(std::clamp(m.expected_percent, 0, 100));
  c.hypervisor = c.role != kNowhere && lab_->roles[c.role].is_hypervisor;
  c.footprint = m.footprint ? *m.footprint : usual_footprint(*lab_, c.role);
  c.exposes_virtualization = m.expose_virtualization;
  c.is_64_bit = m.is_64_bit;
  c.memory_file = m.memory_file;
  c.has_name = !m.name.empty();
  c.has_host_name = !m.host_name.empty();
  c.has_notes = !m.notes.empty();
  c.has_initiator = !m.initiator_name.empty();
}

void Index::read_machines() {
  const std::vector<Machine>& machines = lab_->machines;
  std::vector<std::uint32_t> of_role;
  for (const Role& r : lab_->roles) of_role.push_back(marks_of(r));
  machines_.resize(machines.size());
  facts_.machine_marks.reserve(machines.size());
  name_hashes_.reserve(machines.size());
  for (std::uint32_t p = 0; p < machines.size(); ++p) {
    number(machines[p].id.number, Kind::machine, p);
    read_machine(machines[p], p);
    name_hashes_.add(machines[p]);
    const std::uint32_t role = machines_[p].role;
    const std::uint32_t marks = marks_of(machines[p]) | (role == kNowhere ? 0 : of_role[role]);
    facts_.machine_marks.push_back(marks);
    facts_.any_machine |= marks;
  }
  settle_others();
  carrier_.reserve(machines.size());
  for (MachineColumn& c : machines_) carrier_.push_back(c.carrier = place(MachineId{c.carrier}));
}

void Index::read_cards() {
  const std::vector<Card>& cards = lab_->cards;
  facts_.resize(cards.size(), lab_->segments.size());
  for (std::uint32_t p = 0; p < cards.size(); ++p) {
    number(cards[p].id.number, Kind::card, p);
    facts_.add(*this, cards[p], p);
  }
  settle_others();
  cards_.fill(facts_.card_machine, machines_.size());
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
  for (DiskColumn& d : disk_columns_) {
    d.store_place = place(d.store);
    if (d.store_place == kNowhere) d.store = {};
  }
  disks_.fill(owner, machines_.size());
}

// Breadth first from the PC. Machines that are not reached carry each other in a circle: the first of them
// is put on the PC.
void Index::sort_carriers_first() {
  const auto count = static_cast<std::uint32_t>(machines_.size());
  guests_.fill(carrier_, count + 1, count);
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
  guests_.fill(carrier_, count + 1, count);
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
