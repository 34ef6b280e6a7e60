#include "core/gesture/add.h"

#include "core/addressing/plan.h"
#include "core/addressing/prefix_plan.h"
#include "core/gesture/fill.h"
#include "core/gesture/names.h"
#include "core/gesture/plug.h"
#include "core/gesture/rails.h"
#include "core/roles/catalogue.h"
#include "core/text/gesture_text.h"

#include <algorithm>
#include <cassert>
#include <unordered_map>

namespace snug {

namespace {

class Copies {
 public:
  explicit Copies(const Lab& lab) : lab_(lab), before_(lab) {}
  MachineId copy(const Machine& original, MachineId carrier) {
    Machine m = original;
    m.name = free_name(lab_, Kind::machine, original.name);
    m.host_name.clear();
    m.initiator_name.clear();
    m.carrier = carrier;
    m.routes.clear();
    const MachineId id = detail::append(lab_, std::move(m)).id;
    machine_[original.id] = id;
    for (const Disk& d : before_.disks)
      if (d.machine == original.id) copy_disk(d, id);
    for (const Card& c : before_.cards)
      if (c.machine == original.id) copy_card(c, id);
    for (const MachineId guest : guests_in_order(before_, original.id))
      copy(*find<Machine>(before_, guest), id);
    return id;
  }
  void finish() {
    for (Disk& d : lab_.disks)
      if (disk_.contains(d.base) && is_copy(d.machine)) d.base = disk_[d.base];
    for (Disk& d : lab_.disks)
      if (is_copy(d.machine) && d.store.kind == Kind::disk && disk_.contains(DiskId{d.store.number}))
        d.store = disk_[DiskId{d.store.number}];
    for (Exercise& e : lab_.exercises) {
      const std::vector<MachineId> on = e.on;
      for (const MachineId m : on)
        if (machine_.contains(m)) e.on.push_back(machine_[m]);
    }
    for (const CardId c : cards_) detail::suggest_for(lab_, c);
  }
  Lab& lab() { return lab_; }

 private:
  bool is_copy(MachineId m) const {
    return std::any_of(machine_.begin(), machine_.end(), [m](const auto& pair) { return pair.second == m; });
  }
  void copy_disk(Disk d, MachineId machine) {
    const DiskId original = d.id;
    d.machine = machine;
    disk_[original] = detail::append(lab_, std::move(d)).id;
  }
  void copy_card(Card c, MachineId machine) {
    c.machine = machine;
    c.addresses.clear();
    c.ranges.clear();
    c.dhcp = DhcpDuty::none;
    c.mac.reset();
    c.mac_source = MacSource::derived;
    cards_.push_back(detail::append(lab_, std::move(c)).id);
  }
  Lab lab_;
  const Lab& before_;
  std::unordered_map<MachineId, MachineId> machine_;
  std::unordered_map<DiskId, DiskId> disk_;
  std::vector<CardId> cards_;
};

} // namespace

namespace {

// Where a new guest is connected: of what its hypervisor carries, the segment on which most of its guests
// are; of equals the uppermost rail.
SegmentId usual_segment(const Lab& lab, MachineId carrier) {
  std::vector<SegmentId> carried;
  for (const Card& c : lab.cards)
    if (c.machine == carrier && c.connected)
      for (const SegmentTag& t : c.carries) carried.push_back(t.segment);
  const auto guests = guests_in_order(lab, carrier);
  SegmentId best;
  std::ptrdiff_t most = -1;
  for (const SegmentId s : rails_in_order(lab)) {
    if (std::find(carried.begin(), carried.end(), s) == carried.end()) continue;
    const auto there = std::count_if(lab.cards.begin(), lab.cards.end(), [&](const Card& c) {
      return c.segment == s && std::find(guests.begin(), guests.end(), c.machine) != guests.end();
    });
    if (there <= most) continue;
    most = there;
    best = s;
  }
  return best;
}

} // namespace

Result<Added> add_machine(const Lab& lab, const Role& role, const Spot& spot, ExerciseId current,
                          SegmentId plugged) {
  Lab after = lab;
  EditBuilder roles(lab);
  const RoleId used = use_role(roles, role);
  if (const auto ok = detail::take_in(after, std::move(roles).take({})); !ok) return fail(ok.error());
  Machine m = machine_from(*find<Role>(after, used), lab.facts.sizes);
  m.name = free_name(lab, Kind::machine, role.key);
  const std::string name = m.name;
  const MachineId id = detail::append(after, std::move(m)).id;
  const std::vector<MachineId> one{id};
  if (const auto ok = detail::take_in(after, move_machines(after, one, spot)); !ok) return fail(ok.error());
  for (Machine& x : after.machines)
    if (x.id == id) x.pinned = false;
  Disk disk;
  disk.machine = id;
  disk.size = role.disk;
  disk.store = detail::store_for(lab, spot.carrier);
  detail::append(after, std::move(disk));
  if (current)
    if (const auto ok = detail::take_in(after, set_power(after, current, one, true)); !ok)
      return fail(ok.error());
  if (!plugged && spot.carrier) plugged = usual_segment(lab, spot.carrier);
  if (plugged) {
    const auto card = add_card(after, id, plugged);
    if (!card) return fail(card.error());
    if (const auto ok = detail::take_in(after, card->edit); !ok) return fail(ok.error());
  }
  return Added{detail::edit_between(lab, after, say(text::gesture_add, name)), id};
}

Result<AddedMachines> add_machines(const Lab& lab, const Role& role, int count, const Spot& spot,
                                   ExerciseId current, SegmentId plugged) {
  assert(count >= 1 && count <= kMostAtOnce);
  Lab after = lab;
  std::vector<MachineId> ids;
  for (int i = 0; i < count; ++i) {
    auto added = add_machine(after, role, spot, current, plugged);
    if (!added) return fail(added.error());
    if (const auto ok = detail::take_in(after, std::move(added->edit)); !ok) return fail(ok.error());
    ids.push_back({added->id.number});
  }
  Edit edit = detail::edit_between(lab, after, say(text::gesture_add, names_of(after, ids)));
  return AddedMachines{std::move(edit), std::move(ids)};
}

Added add_segment(const Lab& lab, SegmentKind kind) {
  Lab after = lab;
  Segment s;
  s.type = kind;
  s.name = free_name(lab, Kind::segment, "Segment " + std::to_string(lab.segments.size() + 1));
  for (const Segment& other : lab.segments) s.order = std::max(s.order, other.order + 1);
  if (kind != SegmentKind::isolated && !lab.lans.empty()) s.lan = lab.lans.front().id;
  const std::string name = s.name;
  const SegmentId id = detail::append(after, std::move(s)).id;
  if (kind != SegmentKind::bridged) detail::give_prefixes(after);
  return {detail::edit_between(lab, after, say(text::gesture_add, name)), id};
}

Result<Added> duplicate(const Lab& lab, std::span<const MachineId> ids) {
  if (ids.empty()) return fail(text::gesture_nothing);
  Copies copies(lab);
  std::vector<AnyId> chosen(ids.begin(), ids.end());
  MachineId first;
  for (const MachineId id : outermost(lab, chosen)) {
    const Machine& original = *find<Machine>(lab, id);
    const MachineId made = copies.copy(original, original.carrier);
    if (!first) first = made;
    const std::vector<MachineId> siblings = guests_in_order(copies.lab(), original.carrier);
    const auto at = std::find(siblings.begin(), siblings.end(), id);
    const std::vector<MachineId> one{made};
    Spot spot{original.carrier, original.band, {}};
    for (auto next = at + 1; next != siblings.end() && !spot.before; ++next)
      if (*next != made && find<Machine>(copies.lab(), *next)->band == original.band) spot.before = *next;
    if (const auto ok = detail::take_in(copies.lab(), move_machines(copies.lab(), one, spot)); !ok)
      return fail(ok.error());
  }
  copies.finish();
  return Added{detail::edit_between(lab, copies.lab(), say(text::gesture_duplicate, names_of(lab, ids))),
               first};
}

} // namespace snug
