#include "tests/support/ship_lab.h"

#include <algorithm>
#include <cstdlib>

namespace snug::test {

namespace {

template <typename E>
E& one(std::vector<E>& list, Id<E::kind> id) {
  const auto it = std::find_if(list.begin(), list.end(), [&](const E& e) { return e.id == id; });
  if (it == list.end()) std::abort();
  return *it;
}

} // namespace

RoleId Ship::add_role(std::string key, std::int64_t least, std::int64_t usual) {
  Role r;
  r.id.number = next();
  r.key = r.title = std::move(key);
  r.current_refused_below = least / 2;
  r.current_least = least;
  r.current_usual = usual;
  lab.roles.push_back(r);
  return r.id;
}

MachineId Ship::add_machine(std::string name, RoleId role, std::int64_t memory, MachineId carrier) {
  Machine m;
  m.id.number = next();
  m.name = std::move(name);
  m.role = role;
  m.memory = memory;
  m.processors = 2;
  m.carrier = carrier;
  m.expose_virtualization = role == hypervisor;
  if (role == hypervisor) m.initiator_name = "iqn.2027-01.test.skerry:" + m.name;
  lab.machines.push_back(m);
  if (!lab.exercises.empty()) lab.exercises.front().on.push_back(m.id);
  return m.id;
}

DiskId Ship::add_disk(MachineId machine, std::int64_t size, AnyId store) {
  Disk d;
  d.id.number = next();
  d.machine = machine;
  d.size = size;
  d.store = store;
  lab.disks.push_back(d);
  return d.id;
}

ShareId Ship::add_share(DiskId disk, std::int64_t size, std::int32_t unit) {
  Share s;
  s.id.number = next();
  s.machine = hold;
  s.name = "cargo-" + std::to_string(unit);
  s.disk = disk;
  s.size = size;
  s.target = "iqn.2027-01.test.skerry:hold";
  s.unit = unit;
  s.clients = {deck_a, deck_b};
  lab.shares.push_back(s);
  return s.id;
}

VolumeId Ship::add_volume(std::string name, VolumeKind type, std::int64_t size) {
  Volume v;
  v.id.number = next();
  v.name = std::move(name);
  v.type = type;
  v.size = v.free = size;
  lab.volumes.push_back(v);
  return v.id;
}

CardId Ship::add_card(MachineId machine) {
  Card c;
  c.id.number = next();
  c.machine = machine;
  lab.cards.push_back(c);
  return c.id;
}

SegmentId Ship::add_segment(std::string name, SegmentKind type) {
  Segment s;
  s.id.number = next();
  s.name = std::move(name);
  s.type = type;
  lab.segments.push_back(s);
  return s.id;
}

Ship::Ship() {
  Pc& pc = lab.pc;
  pc.name = "study PC";
  pc.installed = 65536;
  pc.cores = 8;
  pc.threads = 16;
  pc.is_64_bit = pc.firmware_virtualization = Known::yes;
  pc.second_level_translation = pc.nested_virtualization = pc.resolves_lab_names = Known::yes;
  pc.virtualization_occupied = Known::no;
  directory = add_role("directory-server", 2048, 4096);
  management = add_role("management-server", 10240, 12288);
  hypervisor = add_role("nested-hypervisor", 4096, 8192);
  storage = add_role("shared-storage", 1024, 4096);
  application = add_role("application", 1024, 2048);
  role(hypervisor).is_hypervisor = true;
  role(hypervisor).current_footprint = 2048;
  role(management).offers = {{{}, "management", Transport::tcp, 443}};
  fast = add_volume("fast disk", VolumeKind::nvme, 1'000'000);
  beacon = add_machine("beacon", directory, 4096);
  helm = add_machine("helm", management, 12288);
  hold = add_machine("hold", storage, 4096);
  deck_a = add_machine("deck-a", hypervisor, 8192);
  deck_b = add_machine("deck-b", hypervisor, 8192);
  tickets = add_machine("tickets", application, 2048, deck_a);
  beacon_disk = add_disk(beacon, 40960, fast);
  helm_disk = add_disk(helm, 61440, fast);
  hold_disk = add_disk(hold, 16384, fast);
  bay = add_disk(hold, 204800, fast);
  deck_a_disk = add_disk(deck_a, 40960, fast);
  deck_b_disk = add_disk(deck_b, 40960, fast);
  cargo = add_share(bay, 102400, 1);
  tickets_disk = add_disk(tickets, 20480, cargo);
  Exercise all, few;
  all.id.number = next();
  all.name = "All hands";
  for (const Machine& m : lab.machines) all.on.push_back(m.id);
  few.id.number = next();
  few.name = "Quiet";
  few.on = {beacon};
  lab.exercises = {all, few};
  all_hands = all.id;
  quiet = few.id;
}

Machine& Ship::machine(MachineId id) { return one(lab.machines, id); }
Disk& Ship::disk(DiskId id) { return one(lab.disks, id); }
Role& Ship::role(RoleId id) { return one(lab.roles, id); }
Exercise& Ship::exercise(ExerciseId id) { return one(lab.exercises, id); }

} // namespace snug::test
