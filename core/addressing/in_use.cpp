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

// Equal addresses keep their order.
class AddressSorter {
 public:
  void sort(std::span<HeldAddress> held) {
    const auto by_address = [](const HeldAddress& a, const HeldAddress& b) { return a.address < b.address; };
    if (std::is_sorted(held.begin(), held.end(), by_address)) return;
    keys_.clear();
    for (std::uint32_t i = 0; i < held.size(); ++i)
      keys_.push_back({held[i].address.high(), held[i].address.low(), i});
    sort_wide_keys(keys_);
    before_.assign(held.begin(), held.end());
    for (std::size_t i = 0; i < held.size(); ++i) held[i] = before_[keys_[i].place];
  }

 private:
  std::vector<WideKey> keys_;
  std::vector<HeldAddress> before_;
};

} // namespace

AddressesInUse::AddressesInUse(const Index& index) : facts_(index), domains_(index, facts_) {
  read_segments(index);
  hold_all(index);
  AddressSorter sorter;
  for (std::size_t b = 0; b + 1 < start_.size(); ++b) {
    sorter.sort(std::span(held_).subspan(start_[b], start_[b + 1] - start_[b]));
    mark_held(b);
  }
  collect_ranges(index);
  judge_routes(index);
}

void AddressesInUse::read_segments(const Index& index) {
  const Lab& lab = index.lab();
  for (auto* prefixes : {&prefix4_, &prefix6_}) prefixes->reserve(lab.segments.size());
  for (auto* ones : {&gateway4_, &gateway6_, &translator_, &pc4_}) ones->reserve(lab.segments.size());
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

std::size_t AddressesInUse::bucket(const HeldAddress& h) const {
  const std::size_t segment = h.segment == kNowhere ? prefix4_.size() : h.segment;
  return 2 * segment + (h.address.is_v4() ? 0 : 1);
}

template <typename Put>
void AddressesInUse::meet_segment(const Index& index, std::uint32_t segment_place, Put put) const {
  const Segment& s = index.lab().segments[segment_place];
  const auto meet = [&](const std::optional<Address>& a, Holder holder, bool typed) {
    if (!a) return;
    const auto& p = a->is_v4() ? prefix4_[segment_place] : prefix6_[segment_place];
    HeldAddress h;
    h.address = *a;
    h.length = static_cast<std::int16_t>(p ? p->length() : 0);
    h.holder = holder;
    h.kind = typed ? AddressKind::typed : AddressKind::suggested;
    h.segment = segment_place;
    h.domain = domains_.outside(segment_place);
    put(h);
  };
  meet(pc4_[segment_place], Holder::pc_socket, s.pc_address4.has_value());
  if (s.pc_socket) meet(s.pc_address6, Holder::pc_socket, true);
  meet(translator_[segment_place], Holder::translator, s.translator4.has_value());
  const Lan* lan = bridged_lan(index, s);
  if (!lan) return;
  meet(lan->gateway4, Holder::lan_router, true);
  meet(lan->gateway6, Holder::lan_router, true);
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

template <typename Put>
void AddressesInUse::meet_card(const Index& index, std::uint32_t card_place, Put put) const {
  const std::vector<CardAddress>& rows = index.lab().cards[card_place].addresses;
  const std::uint32_t own = facts_.card_segment[card_place];
  const std::uint32_t marks = facts_.card_marks[card_place];
  for (std::size_t row = 0; row < rows.size(); ++row) {
    const CardAddress& a = rows[row];
    if (!a.address || (a.kind != AddressKind::typed && a.kind != AddressKind::suggested)) continue;
    HeldAddress h;
    h.address = *a.address;
    h.kind = a.kind;
    h.row = static_cast<std::uint16_t>(row);
    h.card = card_place;
    h.segment = (marks & CardMark::trunk) == 0 ? own : segment_for(index, card_place, *a.address);
    if (a.length)
      h.length = static_cast<std::int16_t>(std::min(*a.length, a.address->bits()));
    else if (h.segment != kNowhere)
      if (const auto& p = a.address->is_v4() ? prefix4_[h.segment] : prefix6_[h.segment])
        h.length = static_cast<std::int16_t>(p->length());
    if (h.segment == own)
      h.domain = domains_.of_card(card_place);
    else if ((marks & CardMark::connected) != 0 && facts_.card_machine[card_place] != kNowhere)
      h.domain = domains_.inside(index.carrier_of(facts_.card_machine[card_place]), h.segment);
    put(h);
  }
}

// How many there are of each bucket, one place ahead: putting moves each start to where it belongs.
void AddressesInUse::count_held(const Index& index) {
  const auto count = [this](const HeldAddress& h) { ++start_[bucket(h) + 2]; };
  const std::size_t segments = prefix4_.size();
  start_.assign(2 * (segments + 1) + 2, 0);
  for (std::uint32_t s = 0; s < segments; ++s) meet_segment(index, s, count);
  for (std::uint32_t c = 0; c < facts_.card_marks.size(); ++c) {
    if ((facts_.card_marks[c] & CardMark::trunk) != 0) {
      meet_card(index, c, count);
      continue;
    }
    const std::size_t segment = facts_.card_segment[c] == kNowhere ? segments : facts_.card_segment[c];
    start_[2 * segment + 2] += facts_.card_held[c].v4;
    start_[2 * segment + 3] += facts_.card_held[c].v6;
  }
  for (std::size_t b = 2; b < start_.size(); ++b) start_[b] += start_[b - 1];
}

void AddressesInUse::hold_all(const Index& index) {
  count_held(index);
  held_.resize(start_.back());
  const auto hold = [this](const HeldAddress& h) { held_[start_[bucket(h) + 1]++] = h; };
  for (std::uint32_t s = 0; s < prefix4_.size(); ++s) meet_segment(index, s, hold);
  for (std::uint32_t c = 0; c < facts_.card_marks.size(); ++c)
    if ((facts_.card_marks[c] & CardMark::has_address) != 0) meet_card(index, c, hold);
  start_.pop_back();
}

void AddressesInUse::mark_held(std::size_t bucket) {
  const std::size_t segment = bucket / 2;
  std::optional<Prefix> p;
  if (segment < prefix4_.size()) p = bucket % 2 == 0 ? prefix4_[segment] : prefix6_[segment];
  for (std::size_t i = start_[bucket]; i < start_[bucket + 1]; ++i) {
    HeldAddress& h = held_[i];
    if (is_link_local(h.address))
      h.marks = HeldMark::link_local;
    else if (!p)
      h.marks = HeldMark::no_prefix;
    else if (!p->contains(h.address))
      h.marks = HeldMark::outside;
    else if (p->is_reserved(h.address))
      h.marks = HeldMark::reserved;
    if (p && h.marks == 0 && h.length != p->length()) h.marks = HeldMark::other_length;
    if (i > start_[bucket] && held_[i - 1].address == h.address) h.marks |= HeldMark::again;
    any_mark_ |= h.marks;
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
