#include "core/addressing/in_use.h"

#include "core/addressing/sort_keys.h"

#include <algorithm>

namespace snug {

namespace {

const Lan* bridged_lan(const Index& index, const Segment& s) {
  return s.type == SegmentKind::bridged ? index.lan(s.lan) : nullptr;
}

template <typename T>
std::optional<T> first_of(const std::optional<T>& a, const std::optional<T>& b) {
  return a ? a : b;
}

std::optional<Address> translator_of(const Segment& s, const std::optional<Prefix>& prefix) {
  if (s.type != SegmentKind::nat) return std::nullopt;
  if (s.translator4) return s.translator4;
  if (!prefix || !prefix->is_v4()) return std::nullopt;
  return prefix->first_host();
}

std::optional<Address> pc_address_of(const Lab& lab, const Segment& s, const std::optional<Prefix>& prefix) {
  if (!s.pc_socket) return std::nullopt;
  if (s.pc_address4) return s.pc_address4;
  const std::int32_t host = lab.numbering.pc_socket;
  if (s.type == SegmentKind::bridged || !prefix || !prefix->is_v4() || host == 0) return std::nullopt;
  const auto address = prefix->network().plus(host);
  if (!address || !prefix->contains(*address) || prefix->is_reserved(*address)) return std::nullopt;
  return address;
}

void append_ranges(std::vector<AddressesInUse::Range>& out, const std::vector<RangeRow>& rows, AnyId server,
                   std::uint32_t domain) {
  for (const RangeRow& r : rows)
    if (r.first.family() == r.last.family() && r.first <= r.last)
      out.push_back({{r.first, r.last}, server, domain});
}

// Places of `held` sorted by address, IPv4 first.
std::vector<std::uint32_t> order_by_address(const std::vector<HeldAddress>& held) {
  std::vector<std::uint64_t> keys4;
  std::vector<WideKey> keys6;
  keys4.reserve(held.size());
  for (std::uint32_t i = 0; i < held.size(); ++i) {
    const Address& a = held[i].address;
    if (a.is_v4())
      keys4.push_back((static_cast<std::uint64_t>(a.as_u32()) << 32U) | i);
    else
      keys6.push_back({a.high(), a.low(), i});
  }
  sort_by_upper_half(keys4);
  sort_wide_keys(keys6);
  std::vector<std::uint32_t> order;
  order.reserve(held.size());
  for (const std::uint64_t k : keys4) order.push_back(static_cast<std::uint32_t>(k));
  for (const WideKey& k : keys6) order.push_back(k.place);
  return order;
}

} // namespace

AddressesInUse::AddressesInUse(const Index& index) : facts_(index), domains_(index, facts_) {
  const std::size_t segments = index.lab().segments.size();
  read_segments(index);
  for (std::uint32_t s = 0; s < segments; ++s) hold_segment(index, s);
  hold_cards(index);
  sort_held(segments);
  mark_held();
  collect_ranges(index);
  judge_routes(index);
}

void AddressesInUse::read_segments(const Index& index) {
  const Lab& lab = index.lab();
  for (const Segment& s : lab.segments) {
    const Lan* lan = bridged_lan(index, s);
    prefix4_.push_back(lan ? first_of(s.prefix4, lan->prefix4) : s.prefix4);
    prefix6_.push_back(lan ? first_of(s.prefix6, lan->prefix6) : s.prefix6);
    translator_.push_back(translator_of(s, prefix4_.back()));
    gateway4_.push_back(first_of(s.gateway4, lan ? lan->gateway4 : translator_.back()));
    gateway6_.push_back(lan ? first_of(s.gateway6, lan->gateway6) : s.gateway6);
    pc4_.push_back(pc_address_of(lab, s, prefix4_.back()));
  }
}

void AddressesInUse::hold_segment(const Index& index, std::uint32_t segment_place) {
  const Segment& s = index.lab().segments[segment_place];
  const auto hold = [&](const std::optional<Address>& a, Holder holder, AddressKind kind) {
    if (!a) return;
    const auto p = prefix(segment_place, a->family());
    HeldAddress& h = held_.emplace_back();
    h.address = *a;
    h.length = static_cast<std::int16_t>(p ? p->length() : 0);
    h.holder = holder;
    h.kind = kind;
    h.segment = segment_place;
    h.domain = domains_.outside(segment_place);
  };
  const auto kind_of_socket = s.pc_address4 ? AddressKind::typed : AddressKind::suggested;
  hold(pc4_[segment_place], Holder::pc_socket, kind_of_socket);
  if (s.pc_socket) hold(s.pc_address6, Holder::pc_socket, AddressKind::typed);
  hold(translator_[segment_place], Holder::translator,
       s.translator4 ? AddressKind::typed : AddressKind::suggested);
  const Lan* lan = bridged_lan(index, s);
  if (!lan) return;
  hold(lan->gateway4, Holder::lan_router, AddressKind::typed);
  hold(lan->gateway6, Holder::lan_router, AddressKind::typed);
}

std::uint32_t AddressesInUse::segment_for(const Index& index, std::uint32_t card_place,
                                          const Address& address) const {
  const std::uint32_t own = facts_.card_segment[card_place];
  if ((facts_.card_marks[card_place] & CardMark::trunk) == 0) return own;
  const auto holds = [&](std::uint32_t s) {
    if (s == kNowhere) return false;
    const auto p = prefix(s, address.family());
    return p && p->contains(address);
  };
  if (holds(own)) return own;
  for (const SegmentTag& t : index.lab().cards[card_place].trunk)
    if (const std::uint32_t s = index.place(t.segment); holds(s)) return s;
  return own;
}

void AddressesInUse::hold_cards(const Index& index) {
  const std::vector<Card>& cards = index.lab().cards;
  held_.reserve(held_.size() + cards.size());
  for (std::uint32_t c = 0; c < cards.size(); ++c) {
    if ((facts_.card_marks[c] & CardMark::has_address) == 0) continue;
    for (std::size_t row = 0; row < cards[c].addresses.size(); ++row)
      hold_card_row(index, c, static_cast<std::uint16_t>(row));
  }
}

void AddressesInUse::hold_card_row(const Index& index, std::uint32_t card_place, std::uint16_t row) {
  const CardAddress& a = index.lab().cards[card_place].addresses[row];
  if (!a.address || (a.kind != AddressKind::typed && a.kind != AddressKind::suggested)) return;
  HeldAddress& h = held_.emplace_back();
  h.address = *a.address;
  h.kind = a.kind;
  h.row = row;
  h.card = card_place;
  h.segment = segment_for(index, card_place, *a.address);
  const auto p = h.segment == kNowhere ? std::nullopt : prefix(h.segment, a.address->family());
  const std::int32_t length = a.length ? std::min(*a.length, a.address->bits()) : p ? p->length() : 0;
  h.length = static_cast<std::int16_t>(length);
  if (h.segment == facts_.card_segment[card_place])
    h.domain = domains_.of_card(card_place);
  else if ((facts_.card_marks[card_place] & CardMark::connected) != 0 &&
           facts_.card_machine[card_place] != kNowhere)
    h.domain = domains_.inside(index.carrier_of(facts_.card_machine[card_place]), h.segment);
}

void AddressesInUse::sort_held(std::size_t segments) {
  const auto bucket = [segments](const HeldAddress& h) {
    return h.segment == kNowhere ? segments : h.segment;
  };
  start_.assign(segments + 2, 0);
  for (const HeldAddress& h : held_) ++start_[bucket(h) + 1];
  for (std::size_t i = 1; i < start_.size(); ++i) start_[i] += start_[i - 1];
  std::vector<std::uint32_t> next(start_.begin(), start_.end() - 1);
  std::vector<HeldAddress> sorted(held_.size());
  for (const std::uint32_t i : order_by_address(held_)) sorted[next[bucket(held_[i])]++] = held_[i];
  held_ = std::move(sorted);
}

void AddressesInUse::mark_held() {
  const HeldAddress* before = nullptr;
  for (HeldAddress& h : held_) {
    const auto p = h.segment == kNowhere ? std::nullopt : prefix(h.segment, h.address.family());
    if (is_link_local(h.address))
      h.marks = HeldMark::link_local;
    else if (!p)
      h.marks = HeldMark::no_prefix;
    else if (!p->contains(h.address))
      h.marks = HeldMark::outside;
    else if (p->is_reserved(h.address))
      h.marks = HeldMark::reserved;
    if (p && h.marks == 0 && h.length != p->length()) h.marks = HeldMark::other_length;
    if (before && before->segment == h.segment && before->address == h.address) h.marks |= HeldMark::again;
    any_mark_ |= h.marks;
    before = &h;
  }
}

void AddressesInUse::collect_ranges(const Index& index) {
  const Lab& lab = index.lab();
  std::vector<std::pair<std::uint32_t, std::uint32_t>> servers; // segment, card
  facts_.each_card(CardMark::server | CardMark::connected | CardMark::has_ranges, [&](std::uint32_t c) {
    const std::uint32_t s = segment_for(index, c, lab.cards[c].ranges.front().first);
    if (s != kNowhere) servers.emplace_back(s, c);
  });
  std::sort(servers.begin(), servers.end());
  auto server = servers.begin();
  for (std::uint32_t s = 0; s < lab.segments.size(); ++s) {
    const Segment& segment = lab.segments[s];
    range_start_.push_back(static_cast<std::uint32_t>(ranges_.size()));
    if (segment.type == SegmentKind::nat && segment.translator_dhcp)
      append_ranges(ranges_, segment.ranges, segment.id, domains_.outside(s));
    if (const Lan* lan = bridged_lan(index, segment))
      append_ranges(ranges_, lan->pool, lan->id, domains_.outside(s));
    for (; server != servers.end() && server->first == s; ++server) {
      const Card& card = lab.cards[server->second];
      const std::uint32_t machine = facts_.card_machine[server->second];
      const std::uint32_t carrier = machine == kNowhere ? kNowhere : index.carrier_of(machine);
      append_ranges(ranges_, card.ranges, card.id, domains_.inside(carrier, s));
    }
  }
  range_start_.push_back(static_cast<std::uint32_t>(ranges_.size()));
}

std::span<const HeldAddress> AddressesInUse::with(std::uint32_t segment_place, const Address& a) const {
  const auto held = on(segment_place);
  const auto first = std::lower_bound(held.begin(), held.end(), a,
                                      [](const HeldAddress& h, const Address& x) { return h.address < x; });
  auto end = first;
  while (end != held.end() && end->address == a) ++end;
  return {first, end};
}

bool AddressesInUse::is_plain(const Index& index, const Route& r) const {
  if (!r.via) return true;
  const std::uint32_t c = index.place(r.card);
  const std::uint32_t s = c == kNowhere ? kNowhere : facts_.card_segment[c];
  if (s == kNowhere || domains_.of_card(c) != domains_.outside(s)) return false;
  const auto gateway = r.via->is_v4() ? gateway4_[s] : gateway6_[s];
  const auto p = prefix(s, r.via->family());
  return gateway == *r.via && p && p->contains(*r.via);
}

void AddressesInUse::judge_routes(const Index& index) {
  facts_.each_machine(MachineMark::routes, [&](std::uint32_t m) {
    const std::vector<Route>& routes = index.lab().machines[m].routes;
    if (!std::all_of(routes.begin(), routes.end(), [&](const Route& r) { return is_plain(index, r); }))
      odd_routes_.push_back(m);
  });
}

} // namespace snug
