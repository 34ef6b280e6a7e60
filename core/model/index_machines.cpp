#include "core/model/index.h"

#include <algorithm>
#include <limits>

namespace snug {

namespace {

std::uint32_t offer_marks(const std::vector<Offer>& offers) {
  std::uint32_t marks = 0;
  for (const Offer& o : offers)
    marks |= mark_if(o.service == "time", MachineMark::offers_time) |
             mark_if(o.service == "names", MachineMark::offers_names) |
             mark_if(o.service == "directory", MachineMark::offers_directory) |
             mark_if(o.service == "management", MachineMark::offers_management);
  return marks;
}

std::uint32_t need_marks(const std::vector<Need>& needs) {
  std::uint32_t marks = mark_if(!needs.empty(), MachineMark::needs);
  for (const Need& n : needs)
    marks |= mark_if(n.service == "time", MachineMark::needs_time) |
             mark_if(n.service == "names", MachineMark::needs_names);
  return marks;
}

std::uint32_t marks_of(const Role& r) {
  return offer_marks(r.offers) | need_marks(r.needs) |
         mark_if(r.needs_reverse_name, MachineMark::needs_reverse);
}

std::uint32_t marks_of(const Machine& m) {
  std::uint32_t marks = mark_if(m.carrier_time, MachineMark::carrier_time) |
                        mark_if(m.memory_file, MachineMark::memory_file) |
                        mark_if(m.name.empty(), MachineMark::unnamed) |
                        mark_if(!m.host_name.empty(), MachineMark::own_host_name) |
                        mark_if(!m.notes.empty(), MachineMark::notes) |
                        mark_if(!m.initiator_name.empty(), MachineMark::initiator) |
                        mark_if(m.reverse_filter != ReverseFilter::off, MachineMark::filters);
  if (!m.routes.empty())
    marks |= MachineMark::routes | mark_if(m.routes.size() > 1, MachineMark::several_routes);
  if (!m.offers.empty()) marks |= offer_marks(m.offers);
  if (!m.needs.empty()) marks |= need_marks(m.needs);
  return marks;
}

std::int64_t usual_footprint(const Lab& lab, const Role& r) {
  const std::int64_t own = lab.facts.sizes == SizeSet::lean ? r.lean_footprint : r.current_footprint;
  return own > 0 ? own : lab.rules.default_footprint;
}

} // namespace

// What a machine has from its role.
struct Index::RoleUse {
  std::int64_t footprint = 0;
  std::uint32_t marks = 0;
  bool is_hypervisor = false;
};

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

} // namespace snug
