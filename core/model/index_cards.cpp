#include "core/model/index.h"

#include <algorithm>

namespace snug {

namespace {

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
         mark_if(c.forwards6, CardMark::forwards6) | mark_if(c.for_storage, CardMark::for_storage) |
         mark_if(c.for_migration, CardMark::for_migration) | mark_if(c.separated, CardMark::separated) |
         mark_if(c.translates, CardMark::translates);
}

// Gives what the rows say as marks.
std::uint32_t add_addresses(const Card& card, std::uint32_t place, std::vector<AddressRow>& addresses) {
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

void add_carried(const Index& index, const Card& card, std::uint32_t place, NetworkFacts& facts) {
  const auto use = [&](const SegmentTag& t) {
    const std::uint32_t s = index.place(t.segment);
    if (s != kNowhere) facts.segment_used[s] = 1;
    return s;
  };
  for (const SegmentTag& t : card.trunk) use(t);
  for (const SegmentTag& t : card.carries) {
    const std::uint32_t s = use(t);
    if (s != kNowhere && card.connected && facts.card_machine[place] != kNowhere)
      facts.carried.push_back({place, s});
  }
}

} // namespace

// One pass over all cards is a good part of an analysis, so it stands in one place for the compiler.
void Index::read_cards() {
  const std::span<const Card> cards = lab_->cards;
  for (auto* column : {&facts_.card_marks, &facts_.card_segment, &facts_.card_machine})
    column->resize(cards.size());
  facts_.card_mac.resize(cards.size());
  facts_.segment_used.resize(lab_->segments.size());
  facts_.addresses.reserve(2 * cards.size());
  std::uint32_t any = 0;
  for (std::uint32_t p = 0; p < cards.size(); ++p) {
    const Card& card = cards[p];
    number(card.id.number, Kind::card, p);
    const std::uint32_t segment = place(card.segment);
    facts_.card_segment[p] = segment;
    facts_.card_machine[p] = place(card.machine);
    std::uint32_t marks = marks_of(card) | add_addresses(card, p, facts_.addresses);
    constexpr std::uint32_t kRows = CardMark::trunk | CardMark::carries;
    if ((marks & kRows) != 0) add_carried(*this, card, p, facts_);
    if (segment != kNowhere) {
      marks |= CardMark::has_segment;
      facts_.segment_used[segment] = 1;
    } else if ((marks & kRows) == 0) {
      marks |= CardMark::unplugged;
    }
    if (card.mac && card.mac->is_usable())
      facts_.card_mac[p] = card.mac->bits();
    else if (card.mac)
      marks |= CardMark::odd_mac;
    facts_.card_marks[p] = marks;
    any |= marks;
  }
  facts_.any_card = any;
  settle_others();
  cards_ = Groups(facts_.card_machine, static_cast<std::uint32_t>(machines_.size()));
}

} // namespace snug
