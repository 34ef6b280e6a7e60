#include "core/addressing/facts.h"

#include <algorithm>

namespace snug {

namespace {

std::uint32_t mark_if(bool condition, std::uint32_t mark) { return condition ? mark : 0; }

std::uint32_t address_marks(const Card& c) {
  std::uint32_t marks = mark_if(c.addresses.empty(), CardMark::no_rows);
  for (const CardAddress& a : c.addresses) switch (a.kind) {
    case AddressKind::typed:
    case AddressKind::suggested:
      marks |= a.address ? CardMark::has_address : CardMark::incomplete;
      break;
    case AddressKind::dhcp:
      marks |= CardMark::asks_dhcp;
      break;
    case AddressKind::slaac:
      marks |= CardMark::slaac;
      break;
    case AddressKind::none:
      break;
    }
  return marks;
}

std::uint32_t marks_of(const Card& c) {
  return address_marks(c) | mark_if(c.connected, CardMark::connected) |
         mark_if(!c.trunk.empty(), CardMark::trunk) | mark_if(!c.carries.empty(), CardMark::carries) |
         mark_if(only_carries(c), CardMark::only_carries) |
         mark_if(c.dhcp == DhcpDuty::server, CardMark::server) |
         mark_if(c.dhcp == DhcpDuty::relay, CardMark::relay) | mark_if(c.advertises, CardMark::advertises) |
         mark_if(c.mac.has_value(), CardMark::has_mac) | mark_if(c.mtu.has_value(), CardMark::own_mtu) |
         mark_if(!c.ranges.empty(), CardMark::has_ranges) | mark_if(c.published, CardMark::published) |
         mark_if(c.forwards4, CardMark::forwards4) | mark_if(c.forwards6, CardMark::forwards6);
}

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
  std::uint32_t marks = 0;
  for (const Need& n : needs)
    marks |= mark_if(n.service == "time", MachineMark::needs_time) |
             mark_if(n.service == "names", MachineMark::needs_names);
  return marks;
}

std::vector<std::uint32_t> marks_of_roles(const Lab& lab) {
  std::vector<std::uint32_t> marks;
  marks.reserve(lab.roles.size());
  for (const Role& r : lab.roles)
    marks.push_back(offer_marks(r.offers) | need_marks(r.needs) |
                    mark_if(r.needs_reverse_name, MachineMark::needs_reverse));
  return marks;
}

} // namespace

bool only_carries(const Card& c) {
  return !c.carries.empty() && !c.for_management && !c.for_storage && !c.for_migration;
}

bool is_on(const Card& c, SegmentId segment) {
  const auto names_it = [segment](const SegmentTag& t) { return t.segment == segment; };
  return c.segment == segment || std::any_of(c.trunk.begin(), c.trunk.end(), names_it) ||
         std::any_of(c.carries.begin(), c.carries.end(), names_it);
}

NetworkFacts::NetworkFacts(const Index& index) {
  const Lab& lab = index.lab();
  card_marks.reserve(lab.cards.size());
  card_segment.reserve(lab.cards.size());
  card_machine.reserve(lab.cards.size());
  for (const Card& c : lab.cards) {
    const std::uint32_t segment = index.place(c.segment);
    card_segment.push_back(segment);
    card_machine.push_back(index.place(c.machine));
    card_marks.push_back(marks_of(c) | mark_if(segment != kNowhere, CardMark::has_segment));
    any_card |= card_marks.back();
  }
  const std::vector<std::uint32_t> roles = marks_of_roles(lab);
  machine_marks.reserve(lab.machines.size());
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m) {
    const Machine& machine = lab.machines[m];
    const std::uint32_t role = index.place(machine.role);
    machine_marks.push_back((role == kNowhere ? 0 : roles[role]) | offer_marks(machine.offers) |
                            need_marks(machine.needs) |
                            mark_if(!machine.routes.empty(), MachineMark::routes) |
                            mark_if(machine.routes.size() > 1, MachineMark::several_routes) |
                            mark_if(machine.carrier_time, MachineMark::carrier_time) |
                            mark_if(index.is_hypervisor(m), MachineMark::hypervisor));
    any_machine |= machine_marks.back();
  }
}

} // namespace snug
