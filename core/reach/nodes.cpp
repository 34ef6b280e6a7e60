#include "core/addressing/sort_keys.h"
#include "core/reach/builder.h"

#include <algorithm>

namespace snug {

namespace {

// Stand-ins for MACs that a program chooses: locally administered, in a block of their own.
constexpr std::uint64_t kChosenMacs = 0x0e'ff'00'00'00'00ULL;

std::int32_t length_or(const std::optional<Prefix>& p, const Address& a) {
  return p && p->family() == a.family() ? p->length() : a.bits();
}

} // namespace

void ReachBuilder::open_node(AnyId id) {
  ReachNode& n = n_.nodes_.emplace_back();
  n.id = id;
  n.first_port = static_cast<std::uint32_t>(b_.ports.size());
}

ReachPort& ReachBuilder::open_port(AnyId id, std::uint32_t segment, std::uint32_t piece) {
  const auto place = static_cast<std::uint32_t>(b_.ports.size());
  ReachPort& p = b_.ports.emplace_back();
  p.node = static_cast<std::uint32_t>(n_.nodes_.size() - 1);
  p.id = id;
  p.segment = segment;
  p.piece = piece;
  p.mac = kChosenMacs + place;
  p.first_address = p.end_address = static_cast<std::uint32_t>(b_.addresses.size());
  if (segment != kNowhere) p.mtu = lab_.segments[segment].mtu;
  return p;
}

void ReachBuilder::give(const std::optional<Address>& a, std::int32_t length, std::uint32_t port) {
  if (!a) return;
  in_order_ = in_order_ && port + 1 == b_.ports.size();
  b_.addresses.push_back({*a, length, port});
  b_.ports[port].end_address = static_cast<std::uint32_t>(b_.addresses.size());
}

void ReachBuilder::close_node() {
  ReachNode& n = n_.nodes_.back();
  n.end_port = static_cast<std::uint32_t>(b_.ports.size());
  for (std::uint32_t p = n.first_port; p < n.end_port; ++p) {
    n.forwards6 |= b_.ports[p].forwards6;
    if (b_.ports[p].forwards4 || b_.ports[p].forwards6) b_.forwarders.push_back(p);
  }
}

void ReachBuilder::add_machine(std::uint32_t place) {
  open_node(lab_.machines[place].id);
  n_.nodes_.back().on = running_[place] != 0;
  n_.nodes_.back().filter = lab_.machines[place].reverse_filter;
  for (const std::uint32_t c : index_.cards_of(place)) {
    const Card& card = lab_.cards[c];
    const std::uint32_t own = index_.segment_of_card(c);
    if (own != kNowhere || card.trunk.empty()) add_port(place, c, own);
    for (const SegmentTag& t : card.trunk)
      if (const std::uint32_t s = index_.place(t.segment); s != kNowhere && s != own) add_port(place, c, s);
  }
  close_node();
}

// A switch in a hypervisor is up while its uplink or a running guest is plugged into it (seen in the kernel).
bool ReachBuilder::has_carrier(std::uint32_t machine, std::uint32_t segment) const {
  if (b_.pieces[piece(machine, segment)].parent != kNowhere) return true;
  const SegmentId id = lab_.segments[segment].id;
  for (const std::uint32_t guest : index_.guests_of(machine))
    for (const std::uint32_t c : index_.cards_of(guest)) {
      const Card& card = lab_.cards[c];
      const auto is_it = [id](const SegmentTag& t) { return t.segment == id; };
      if (running_[guest] == 0 || !card.connected) continue;
      if (card.segment == id || std::any_of(card.trunk.begin(), card.trunk.end(), is_it)) return true;
    }
  return false;
}

void ReachBuilder::add_port(std::uint32_t machine, std::uint32_t card_place, std::uint32_t segment) {
  const Card& card = lab_.cards[card_place];
  const auto place = static_cast<std::uint32_t>(b_.ports.size());
  const std::uint32_t at = card.connected ? piece(index_.carrier_of(machine), segment) : kNowhere;
  const bool holds_switches = piece_start_[machine] != piece_start_[machine + 1];
  const std::uint32_t in = holds_switches ? piece(machine, segment) : kNowhere;
  const bool inside = in != kNowhere && b_.pieces[in].up == card.id && has_carrier(machine, segment);
  ReachPort& p = open_port(card.id, segment, inside ? in : at);
  p.inside = inside;
  p.separated = card.separated && !inside;
  p.forwards4 = card.forwards4;
  p.forwards6 = card.forwards6;
  p.translates = card.translates;
  p.advertises = card.advertises;
  if (card.mtu) p.mtu = *card.mtu;
  if (card.mac) p.mac = card.mac->bits();
  if (inside) b_.pieces[in].up_mac = p.mac;
  add_card_rows(place, card_place);
}

void ReachBuilder::add_card_rows(std::uint32_t port, std::uint32_t card) {
  ReachPort& p = b_.ports[port];
  const NetworkFacts& facts = index_.facts();
  const std::uint32_t own = facts.card_segment[card], marks = facts.card_marks[card];
  p.wants_lease = (marks & CardMark::asks_dhcp) != 0 && p.segment == own;
  p.wants_advertised = (marks & CardMark::slaac) != 0 && p.segment == own;
  const bool trunk = (marks & CardMark::trunk) != 0;
  for (std::uint32_t i = first_row_[card]; i < first_row_[card + 1]; ++i) {
    const AddressRow& row = facts.addresses[i];
    const std::uint32_t s = trunk ? held_.segment_for(index_, card, row.address()) : own;
    if (s != p.segment || (row.is_v6 && p.mtu < kLeastMtu6)) continue;
    ReachAddress& a = b_.addresses.emplace_back(); // filled in place: there are many
    a.address = row.address();
    a.port = port;
    if (row.length != AddressRow::kNoLength)
      a.length = row.length;
    else
      a.length = s == kNowhere ? a.address.bits() : length_or(held_.prefix(s, a.address.family()), a.address);
  }
  p.end_address = static_cast<std::uint32_t>(b_.addresses.size());
}

// The PC has a socket where the plan says so, and a card on every LAN that a segment is bridged to.
void ReachBuilder::add_pc() {
  open_node(AnyId{Kind::pc, 0});
  std::vector<std::uint32_t> lans;
  for (std::uint32_t s = 0; s < lab_.segments.size(); ++s) {
    const Segment& segment = lab_.segments[s];
    if (!segment.pc_socket) continue;
    const auto place = static_cast<std::uint32_t>(b_.ports.size());
    ReachPort& p = open_port(segment.id, s, 1 + s);
    p.forwards4 = p.forwards6 = lab_.pc.forwards;
    const auto a4 = held_.pc_address4(s);
    p.wants_lease = !a4 && segment.type == SegmentKind::bridged;
    if (segment.type == SegmentKind::bridged) lans.push_back(b_.pieces[1 + s].root);
    if (a4) give(a4, length_or(held_.prefix4(s), *a4), place);
    if (segment.pc_address6)
      give(segment.pc_address6, length_or(held_.prefix6(s), *segment.pc_address6), place);
  }
  for (const auto& [key, at] : lan_pieces_) {
    if (std::find(lans.begin(), lans.end(), b_.pieces[at].root) != lans.end() || key.second != 0) continue;
    ReachPort& p = open_port(lab_.lans[key.first].id, kNowhere, at);
    p.forwards4 = p.forwards6 = lab_.pc.forwards;
    p.wants_lease = true;
  }
  const bool has_way_out = std::any_of(lab_.segments.begin(), lab_.segments.end(),
                                       [](const Segment& s) { return s.type == SegmentKind::nat; });
  if (lab_.lans.empty() && has_way_out) { // translators leave the PC by a network that the plan does not name
    ReachPort& p = open_port(AnyId{Kind::pc, 0}, kNowhere, beyond());
    p.forwards4 = p.forwards6 = lab_.pc.forwards;
  }
  close_node();
}

// Behind a translator lies the LAN that its segment leaves through, or the outside itself (DECISIONS 14).
void ReachBuilder::add_translators() {
  for (std::uint32_t s = 0; s < lab_.segments.size(); ++s) {
    const Segment& segment = lab_.segments[s];
    const auto inner = held_.translator(s);
    if (segment.type != SegmentKind::nat || !inner) continue;
    open_node(segment.id);
    const auto place = static_cast<std::uint32_t>(b_.ports.size());
    open_port(segment.id, s, 1 + s).forwards4 = true;
    give(inner, length_or(held_.prefix4(s), *inner), place);
    std::uint32_t lan = index_.place(segment.lan);
    if (lan == kNowhere && lab_.lans.size() == 1) lan = 0; // the PC has no other way out
    ReachPort& out = open_port(segment.id, kNowhere, lan == kNowhere ? beyond() : lan_piece(lan, 0));
    out.forwards4 = out.translates = true;
    out.wants_lease = lan != kNowhere;
    close_node();
  }
}

void ReachBuilder::add_lan_routers() {
  for (const auto& [key, at] : lan_pieces_) {
    const Lan& lan = lab_.lans[key.first];
    open_node(lan.id);
    const auto place = static_cast<std::uint32_t>(b_.ports.size());
    ReachPort& in = open_port(lan.id, kNowhere, at);
    in.forwards4 = in.forwards6 = true;
    if (lan.gateway4) give(lan.gateway4, length_or(lan.prefix4, *lan.gateway4), place);
    if (lan.gateway6) give(lan.gateway6, length_or(lan.prefix6, *lan.gateway6), place);
    in.advertises = lan.gateway6.has_value();
    ReachPort& out = open_port(lan.id, kNowhere, beyond());
    out.forwards4 = out.forwards6 = out.translates = true;
    close_node();
  }
}

namespace {

// Addresses for documentation (RFC 5737, RFC 3849) stand for the outside.
Address unused(const Lab& lab, const AddressesInUse& held, std::initializer_list<Address> candidates) {
  for (const Address& a : candidates) {
    bool used = false;
    for (std::uint32_t s = 0; s < lab.segments.size(); ++s) {
      const auto& p = held.prefix(s, a.family());
      used |= p && p->length() > 0 && p->contains(a);
    }
    if (!used) return a;
  }
  return *(candidates.end() - 1);
}

} // namespace

void ReachBuilder::add_outside() {
  open_node(AnyId{Kind::outside, 0});
  const auto place = static_cast<std::uint32_t>(b_.ports.size());
  open_port(AnyId{Kind::outside, 0}, kNowhere, beyond());
  const Address a4 =
      unused(lab_, held_, {Address::v4(0xc000'0201), Address::v4(0xc633'6401), Address::v4(0xcb00'7101)});
  const Address a6 = unused(
      lab_, held_, {Address::v6(0x2001'0db8'0000'00ffULL, 1), Address::v6(0x2001'0db8'ffff'ffffULL, 1)});
  give(a4, 32, place);
  give(a6, 128, place);
  close_node();
  std::int64_t next = 1;
  for (std::uint32_t p = 0; p < place; ++p)
    if (b_.ports[p].piece == beyond()) {
      give(a4.plus(next), 32, p);
      if (b_.ports[p].forwards6) give(a6.plus(next), 128, p);
      ++next;
    }
}

void ReachBuilder::find_shared_macs() {
  std::vector<std::uint64_t> values; // 0: none
  values.reserve(b_.ports.size());
  for (const ReachPort& p : b_.ports) values.push_back(p.piece == kNowhere ? 0 : p.mac + 1);
  std::vector<std::pair<std::uint64_t, std::uint32_t>> macs;
  for (const WideKey& k : maybe_repeated(values)) macs.emplace_back(k.low, k.place);
  std::sort(macs.begin(), macs.end());
  for (std::size_t i = 0; i < macs.size(); ++i) {
    const bool before = i > 0 && macs[i - 1].first == macs[i].first;
    const bool after = i + 1 < macs.size() && macs[i + 1].first == macs[i].first;
    if (!before && !after) continue;
    b_.ports[macs[i].second].mac_twice = true;
    b_.shared_macs.push_back(macs[i].second);
  }
}

} // namespace snug
