#include "core/model/index.h"

#include "core/model/names.h"

#include <algorithm>
#include <limits>
#include <tuple>

namespace snug {

namespace {

constexpr std::size_t kSpareSlots = 1024;

std::size_t element_count(const Lab& lab) {
  return lab.volumes.size() + lab.lans.size() + lab.places.size() + lab.roles.size() + lab.segments.size() +
         lab.machines.size() + lab.cards.size() + lab.disks.size() + lab.shares.size() +
         lab.exercises.size() + lab.promises.size() + lab.accepted.size();
}

std::int64_t usual_footprint(const Lab& lab, const Role& r) {
  const std::int64_t own = lab.facts.sizes == SizeSet::lean ? r.lean_footprint : r.current_footprint;
  return own > 0 ? own : lab.rules.default_footprint;
}

// Numbers stay below next_id in every lab that was read or edited.
std::size_t slot_count(const Lab& lab) {
  const std::size_t count = element_count(lab);
  return std::min(2 * count + kSpareSlots, std::max<std::size_t>(lab.facts.next_id, count));
}

} // namespace

// What a machine has from its role.
struct Index::RoleUse {
  std::int64_t footprint = 0;
  std::uint32_t marks = 0;
  bool is_hypervisor = false;
};

// Cards refer to machines and segments, so those are numbered first.
Index::Index(const Lab& lab) : lab_(&lab) {
  slots_.resize(slot_count(lab));
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

// By place; the last is that of machines without a role.
std::vector<Index::RoleUse> Index::role_uses() const {
  std::vector<RoleUse> uses;
  uses.reserve(lab_->roles.size() + 1);
  for (const Role& r : lab_->roles) uses.push_back({usual_footprint(*lab_, r), marks_of(r), r.is_hypervisor});
  uses.push_back({lab_->rules.default_footprint, MachineMark::no_role, false});
  return uses;
}

// The carrier is its number until all machines have their places.
void Index::read_machine(const Machine& m, const std::vector<RoleUse>& uses) {
  const std::uint32_t role = place(m.role);
  const std::size_t nth = std::min<std::size_t>(role, uses.size() - 1);
  const RoleUse& use = uses[nth];
  least_memory_[nth] = std::min(least_memory_[nth], m.memory);
  machines_.push_back({.memory = m.memory,
                       .footprint = m.footprint ? *m.footprint : use.footprint,
                       .carrier = m.carrier.number,
                       .role = role,
                       .processors = m.processors,
                       .expected_percent = static_cast<std::uint8_t>(std::clamp(m.expected_percent, 0, 100)),
                       .hypervisor = use.is_hypervisor,
                       .exposes_virtualization = m.expose_virtualization,
                       .is_64_bit = m.is_64_bit,
                       .memory_file = m.memory_file});
  const std::uint32_t marks = marks_of(m) | use.marks;
  facts_.machine_marks.push_back(marks);
  facts_.any_machine |= marks;
}

void Index::read_machines() {
  const std::vector<Machine>& machines = lab_->machines;
  const std::vector<RoleUse> uses = role_uses();
  least_memory_.assign(uses.size(), std::numeric_limits<std::int64_t>::max());
  machines_.reserve(machines.size());
  facts_.machine_marks.reserve(machines.size());
  name_hashes_.reserve(machines.size());
  for (std::uint32_t p = 0; p < machines.size(); ++p) {
    number(machines[p].id.number, Kind::machine, p);
    read_machine(machines[p], uses);
    name_hashes_.add(machines[p]);
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
  cards_ = Groups(facts_.card_machine, static_cast<std::uint32_t>(machines_.size()));
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
    disk_kinds_.homeless |= d.store_place == kNowhere;
    disk_kinds_.copies |= d.provisioning == Provisioning::copy_on_write;
    disk_kinds_.bases |= d.has_base;
  }
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
