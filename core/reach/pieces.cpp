#include "core/reach/builder.h"

#include <algorithm>

namespace snug {

void ReachBuilder::add_pieces() {
  const auto segments = static_cast<std::uint32_t>(lab_.segments.size());
  b_.pieces.emplace_back(); // beyond
  const auto add = [&](std::uint32_t segment) {
    ReachPiece& p = b_.pieces.emplace_back();
    p.segment = segment;
    p.port_mtu = lab_.segments[segment].mtu;
  };
  for (std::uint32_t s = 0; s < segments; ++s) add(s);
  piece_start_.reserve(lab_.machines.size() + 1);
  for (std::uint32_t m = 0; m < lab_.machines.size(); ++m) {
    piece_start_.push_back(static_cast<std::uint32_t>(b_.pieces.size()));
    for (const std::uint32_t s : held_.domains().pieces_in(m)) add(s);
  }
  piece_start_.push_back(static_cast<std::uint32_t>(b_.pieces.size()));
  add_lan_pieces();
  join_carried();
  settle_pieces();
}

std::uint32_t ReachBuilder::piece(std::uint32_t carrier, std::uint32_t segment) const {
  if (segment == kNowhere) return kNowhere;
  if (carrier == kNowhere) return 1 + segment;
  const std::uint32_t end = piece_start_[carrier + 1];
  std::uint32_t at = piece_start_[carrier];
  constexpr std::uint32_t kHandful = 8;
  if (end - at > kHandful) {
    const auto is_before = [](const ReachPiece& p, std::uint32_t s) { return p.segment < s; };
    const auto all = std::span(b_.pieces).first(end);
    at = static_cast<std::uint32_t>(std::lower_bound(all.begin() + at, all.end(), segment, is_before) -
                                    all.begin());
  }
  while (at < end && b_.pieces[at].segment < segment) ++at;
  return at < end && b_.pieces[at].segment == segment ? at : kNowhere;
}

std::uint32_t ReachBuilder::lan_piece(std::uint32_t lan, std::int32_t vlan) {
  const auto [it, is_new] =
      lan_pieces_.try_emplace({lan, vlan}, static_cast<std::uint32_t>(b_.pieces.size()));
  if (is_new) b_.pieces.emplace_back().port_mtu = 0xffff; // as much as the segments on it let through
  return it->second;
}

// Bridged segments of one LAN and VLAN are one network with it.
void ReachBuilder::add_lan_pieces() {
  for (std::uint32_t l = 0; l < lab_.lans.size(); ++l) lan_piece(l, 0);
  for (std::uint32_t s = 0; s < lab_.segments.size(); ++s) {
    const Segment& segment = lab_.segments[s];
    const std::uint32_t lan = index_.place(segment.lan);
    if (segment.type == SegmentKind::bridged && lan != kNowhere)
      b_.pieces[1 + s].parent = lan_piece(lan, segment.vlan);
  }
}

namespace {

bool stops_other_macs(const Index& index, const Segment& s) {
  if (s.passes_other_macs == Known::no) return true;
  const Lan* lan = s.type == SegmentKind::bridged ? index.lan(s.lan) : nullptr;
  return lan && lan->medium == Medium::wireless; // a station sends its own MAC only
}

} // namespace

// The first card that carries a segment is its uplink; a second one would be a loop (an error elsewhere).
void ReachBuilder::join_carried() {
  const NetworkFacts& facts = index_.facts();
  for (const auto& [card_place, s] : facts.carried) {
    const std::uint32_t machine = facts.card_machine[card_place];
    const std::uint32_t inside = piece(machine, s), outside = piece(index_.carrier_of(machine), s);
    if (inside == kNowhere || outside == kNowhere || b_.pieces[inside].parent != kNowhere) continue;
    const Card& card = lab_.cards[card_place];
    ReachPiece& p = b_.pieces[inside];
    p.parent = outside;
    p.up = card.id;
    p.up_own_mac_only = card.own_mac_only || stops_other_macs(index_, lab_.segments[s]);
    p.up_separated = card.separated;
    p.up_mtu = card.mtu.value_or(lab_.segments[s].mtu);
    p.up_mac = card.mac ? card.mac->bits() : 0;
  }
  note_cut_uplinks();
}

// One without a cable joins nothing, but the hypervisor's own end still sits on the switch inside.
void ReachBuilder::note_cut_uplinks() {
  index_.facts().each_card(CardMark::carries, [this](std::uint32_t place) {
    const Card& card = lab_.cards[place];
    const std::uint32_t machine = index_.facts().card_machine[place];
    if (card.connected || machine == kNowhere) return;
    for (const SegmentTag& t : card.carries) {
      const std::uint32_t inside = piece(machine, index_.place(t.segment));
      if (inside != kNowhere && !b_.pieces[inside].up) b_.pieces[inside].up = card.id;
    }
  });
}

// Parents may come after their children in the list: climb from each.
void ReachBuilder::settle_pieces() {
  for (std::uint32_t i = 0; i < b_.pieces.size(); ++i) {
    std::uint32_t top = i;
    std::int32_t depth = 0;
    for (; b_.pieces[top].parent != kNowhere; top = b_.pieces[top].parent) ++depth;
    b_.pieces[i].root = top;
    b_.pieces[i].depth = depth;
  }
}

} // namespace snug
