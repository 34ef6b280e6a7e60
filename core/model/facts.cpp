#include "core/model/facts.h"

#include "core/model/index.h"

#include <algorithm>

namespace snug {

namespace {

// A shift: every mark is one bit.
std::uint32_t mark_if(bool condition, std::uint32_t mark) {
  return static_cast<std::uint32_t>(condition) * mark;
}

std::uint8_t length_of(const CardAddress& a) {
  return a.length ? static_cast<std::uint8_t>(std::clamp(*a.length, 0, a.address->bits()))
                  : AddressRow::kNoLength;
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
         mark_if(c.own_mac_only, CardMark::own_mac_only) | mark_if(c.forwards4, CardMark::forwards4) |
         mark_if(c.forwards6, CardMark::forwards6);
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

} // namespace

bool only_carries(const Card& c) {
  return !c.carries.empty() && !c.for_management && !c.for_storage && !c.for_migration;
}

bool is_on(const Card& c, SegmentId segment) {
  const auto names_it = [segment](const SegmentTag& t) { return t.segment == segment; };
  return c.segment == segment || std::any_of(c.trunk.begin(), c.trunk.end(), names_it) ||
         std::any_of(c.carries.begin(), c.carries.end(), names_it);
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
                        mark_if(!m.initiator_name.empty(), MachineMark::initiator);
  if (!m.routes.empty())
    marks |= MachineMark::routes | mark_if(m.routes.size() > 1, MachineMark::several_routes);
  if (!m.offers.empty()) marks |= offer_marks(m.offers);
  if (!m.needs.empty()) marks |= need_marks(m.needs);
  return marks;
}

void NetworkFacts::resize(std::size_t cards, std::size_t segments) {
  for (auto* column : {&card_marks, &card_segment, &card_machine}) column->resize(cards);
  card_mac.resize(cards);
  addresses.reserve(2 * cards);
  segment_used.resize(segments);
}

void NetworkFacts::add(const Index& index, const Card& card, std::uint32_t place) {
  const std::uint32_t segment = index.place(card.segment);
  card_segment[place] = segment;
  card_machine[place] = index.place(card.machine);
  std::uint32_t marks = add_addresses(card, place) | marks_of(card);
  if (segment != kNowhere) {
    marks |= CardMark::has_segment;
    segment_used[segment] = 1;
  }
  constexpr std::uint32_t kRows = CardMark::trunk | CardMark::carries;
  if ((marks & (kRows | CardMark::has_segment)) == 0) marks |= CardMark::unplugged;
  if (card.mac && card.mac->is_usable())
    card_mac[place] = card.mac->bits();
  else if (card.mac)
    marks |= CardMark::odd_mac;
  card_marks[place] = marks;
  any_card |= marks;
  if ((marks & kRows) != 0) add_rows(index, card, place);
}

std::uint32_t NetworkFacts::add_addresses(const Card& card, std::uint32_t place) {
  if (card.addresses.empty()) return CardMark::no_rows;
  std::uint32_t marks = 0;
  std::uint16_t row = 0;
  for (const CardAddress& a : card.addresses) {
    const bool suggested = a.kind == AddressKind::suggested;
    if (!suggested && a.kind != AddressKind::typed) {
      marks |= mark_if(a.kind == AddressKind::dhcp, CardMark::asks_dhcp) |
               mark_if(a.kind == AddressKind::slaac, CardMark::slaac);
    } else if (a.address) {
      marks |= CardMark::has_address;
      addresses.push_back(
          {a.address->high(), a.address->low(), place, row, length_of(a), !a.address->is_v4(), suggested});
    } else {
      marks |= CardMark::incomplete;
    }
    ++row;
  }
  return marks;
}

void NetworkFacts::add_rows(const Index& index, const Card& card, std::uint32_t place) {
  for (const SegmentTag& t : card.trunk)
    if (const std::uint32_t s = index.place(t.segment); s != kNowhere) segment_used[s] = 1;
  for (const SegmentTag& t : card.carries) {
    const std::uint32_t s = index.place(t.segment);
    if (s == kNowhere) continue;
    segment_used[s] = 1;
    if (card.connected && card_machine[place] != kNowhere) carried.push_back({place, s});
  }
}

} // namespace snug
