#include "core/addressing/facts.h"

#include <algorithm>

namespace snug {

namespace {

std::uint32_t mark_if(bool condition, std::uint32_t mark) { return condition ? mark : 0; }

std::uint32_t address_marks(const Card& c, NetworkFacts::Held& held) {
  std::uint32_t marks = mark_if(c.addresses.empty(), CardMark::no_rows);
  for (const CardAddress& a : c.addresses) switch (a.kind) {
    case AddressKind::typed:
    case AddressKind::suggested:
      marks |= a.address ? CardMark::has_address : CardMark::incomplete;
      if (a.address) ++(a.address->is_v4() ? held.v4 : held.v6);
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

// Whether the rows say more than the card's own segment without VLAN id.
bool has_mixed_tags(const Card& c) {
  const auto other = [&c](const SegmentTag& t) { return t.vlan != 0 || t.segment != c.segment; };
  return std::any_of(c.trunk.begin(), c.trunk.end(), other) ||
         std::any_of(c.carries.begin(), c.carries.end(), other);
}

std::uint32_t row_marks(const Card& c) {
  if (c.trunk.empty() && c.carries.empty()) return 0;
  return mark_if(!c.trunk.empty(), CardMark::trunk) | mark_if(!c.carries.empty(), CardMark::carries) |
         mark_if(only_carries(c), CardMark::only_carries) | mark_if(has_mixed_tags(c), CardMark::mixed_tags);
}

std::uint32_t marks_of(const Card& c) {
  return row_marks(c) | mark_if(c.connected, CardMark::connected) |
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

NetworkFacts::NetworkFacts(const Index& index)
    : card_segment(index.segments_of_cards()), card_machine(index.machines_of_cards()) {
  read_cards(index);
  read_machines(index);
}

void NetworkFacts::read_cards(const Index& index) {
  const std::vector<Card>& cards = index.lab().cards;
  card_marks.resize(cards.size());
  card_mac.resize(cards.size());
  card_held.resize(cards.size());
  segment_used.resize(index.lab().segments.size());
  for (std::uint32_t c = 0; c < cards.size(); ++c) {
    std::uint32_t marks = address_marks(cards[c], card_held[c]) | marks_of(cards[c]);
    if (card_segment[c] != kNowhere) {
      marks |= CardMark::has_segment;
      segment_used[card_segment[c]] = 1;
    }
    constexpr std::uint32_t kRows = CardMark::trunk | CardMark::carries;
    if ((marks & kRows) != 0) read_rows(index, c);
    if ((marks & (kRows | CardMark::has_segment)) == 0) marks |= CardMark::unplugged;
    if (const auto& mac = cards[c].mac) {
      if (mac->is_usable())
        card_mac[c] = mac->bits();
      else
        marks |= CardMark::odd_mac;
    }
    card_marks[c] = marks;
    any_card |= marks;
  }
}

void NetworkFacts::read_rows(const Index& index, std::uint32_t card_place) {
  const Card& card = index.lab().cards[card_place];
  for (const SegmentTag& t : card.trunk)
    if (const std::uint32_t s = index.place(t.segment); s != kNowhere) segment_used[s] = 1;
  for (const SegmentTag& t : card.carries) {
    const std::uint32_t s = index.place(t.segment);
    if (s == kNowhere) continue;
    segment_used[s] = 1;
    if (card.connected && card_machine[card_place] != kNowhere) carried.push_back({card_place, s});
  }
}

void NetworkFacts::read_machines(const Index& index) {
  const Lab& lab = index.lab();
  const std::vector<std::uint32_t> roles = marks_of_roles(lab);
  machine_marks.resize(lab.machines.size());
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m) {
    const Machine& machine = lab.machines[m];
    const std::uint32_t role = index.machines()[m].role;
    std::uint32_t marks = (role == kNowhere ? 0 : roles[role]) | offer_marks(machine.offers) |
                          need_marks(machine.needs) |
                          mark_if(machine.carrier_time, MachineMark::carrier_time) |
                          mark_if(index.is_hypervisor(m), MachineMark::hypervisor);
    if (!machine.routes.empty()) marks |= MachineMark::routes;
    if (machine.routes.size() > 1) marks |= MachineMark::several_routes;
    machine_marks[m] = marks;
    any_machine |= marks;
  }
}

} // namespace snug
