#include "core/addressing/in_use.h"

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

std::uint32_t group_of(std::uint32_t segment_place, bool is_v6) {
  return 2 * segment_place + (is_v6 ? 1 : 0);
}

} // namespace

AddressesInUse::AddressesInUse(const Index& index) : facts_(&index.facts()), domains_(index) {
  read_segments(index);
  collect_ranges(index);
  sort_and_hold(index);
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

// PC sockets, translators and LANs' routers.
std::vector<HeldAddress> AddressesInUse::held_by_segments(const Index& index) const {
  std::vector<HeldAddress> out;
  for (std::uint32_t s = 0; s < prefix4_.size(); ++s) {
    const Segment& segment = index.lab().segments[s];
    const auto meet = [&](const std::optional<Address>& a, Holder holder, bool typed) {
      if (!a) return;
      const auto& p = prefix(s, a->family());
      HeldAddress& h = out.emplace_back();
      h.address = *a;
      h.length = static_cast<std::int16_t>(p ? p->length() : 0);
      h.holder = holder;
      h.kind = typed ? AddressKind::typed : AddressKind::suggested;
      h.segment = s;
      h.domain = domains_.outside(s);
    };
    meet(pc4_[s], Holder::pc_socket, segment.pc_address4.has_value());
    if (segment.pc_socket) meet(segment.pc_address6, Holder::pc_socket, true);
    meet(translator_[s], Holder::translator, segment.translator4.has_value());
    const Lan* lan = bridged_lan(index, segment);
    if (!lan) continue;
    meet(lan->gateway4, Holder::lan_router, true);
    meet(lan->gateway6, Holder::lan_router, true);
  }
  return out;
}

std::uint32_t AddressesInUse::segment_for(const Index& index, std::uint32_t card_place,
                                          const Address& address) const {
  const std::uint32_t own = facts_->card_segment[card_place];
  if ((facts_->card_marks[card_place] & CardMark::trunk) == 0) return own;
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

std::uint32_t AddressesInUse::segment_of(const Index& index, const AddressRow& row) const {
  if ((facts_->card_marks[row.card] & CardMark::trunk) != 0)
    return segment_for(index, row.card, row.address());
  return facts_->card_segment[row.card];
}

// Places of those of `first`, then of those of cards.
Groups AddressesInUse::by_group(const Index& index, std::span<const HeldAddress> first) const {
  const std::vector<AddressRow>& rows = facts_->addresses;
  const auto segments = static_cast<std::uint32_t>(prefix4_.size());
  std::vector<std::uint32_t> groups(first.size() + rows.size());
  auto to = groups.begin();
  for (const HeldAddress& h : first) *to++ = group_of(h.segment, !h.address.is_v4());
  const bool trunks = (facts_->any_card & CardMark::trunk) != 0;
  const std::span<const std::uint32_t> own = facts_->card_segment;
  for (const AddressRow& r : rows) {
    const std::uint32_t s = trunks ? segment_of(index, r) : own[r.card];
    *to++ = group_of(std::min(s, segments), r.is_v6);
  }
  return {groups, group_of(segments + 1, false)};
}

std::vector<PackedRange> AddressesInUse::packed_ranges() const {
  std::vector<PackedRange> out;
  out.reserve(ranges_.size());
  for (std::uint32_t s = 0; s < prefix4_.size(); ++s)
    for (const Range& r : ranges(s))
      out.push_back({group_of(s, !r.range.first.is_v4()), r.range.first.value(), r.range.last.value()});
  return out;
}

namespace {

// Whether all from `first` to `last` may be hosts of the prefix, so that none of them needs a mark. The
// blocks of link-local addresses are /16 and /10: a longer prefix lies in one or has nothing of it.
bool all_are_plain(const Address& first, const Address& last, const Prefix& p) {
  const bool whole = p.length() >= (p.is_v4() ? 16 : 10);
  return whole && p.contains(first) && p.contains(last) && !is_link_local(first) && !p.is_reserved(first) &&
         !p.is_reserved(last);
}

} // namespace

// One group after the other: sorted, noted and marked while it is near.
void AddressesInUse::sort_and_hold(const Index& index) {
  const std::vector<HeldAddress> first = held_by_segments(index);
  const std::span<const AddressRow> rows = facts_->addresses;
  const Groups groups = by_group(index, first);
  const std::uint32_t count = group_of(static_cast<std::uint32_t>(prefix4_.size()) + 1, false);
  const auto others = static_cast<std::uint32_t>(first.size());
  ConflictSweep sweep(packed_ranges());
  std::vector<WideKey> keys;
  held_.reserve(first.size() + rows.size());
  marked_.resize(count);
  for (std::uint32_t g = 0; g < count; ++g) {
    keys.clear();
    for (const std::uint32_t p : groups.of(g))
      if (p < others)
        keys.push_back({first[p].address.high(), first[p].address.low(), p, g});
      else
        keys.push_back({rows[p - others].high, rows[p - others].low, p, g});
    sweep.add(keys);
    if (!keys.empty()) hold(index, keys, first, g);
  }
  conflicts_ = std::move(sweep).take();
}

void AddressesInUse::hold(const Index& index, std::span<const WideKey> keys,
                          std::span<const HeldAddress> first, std::uint32_t group) {
  const std::uint32_t s = group / 2 == prefix4_.size() ? kNowhere : group / 2;
  const Family family = group % 2 == 0 ? Family::v4 : Family::v6;
  const auto p = s == kNowhere ? std::nullopt : prefix(s, family);
  const auto length = static_cast<std::int16_t>(p ? p->length() : 0);
  const std::size_t start = held_.size();
  const auto others = static_cast<std::uint32_t>(first.size());
  const std::span<const AddressRow> rows = facts_->addresses;
  bool one_length = true;
  for (const WideKey& k : keys) {
    if (k.place < others) {
      held_.push_back(first[k.place]);
    } else {
      const AddressRow& row = rows[k.place - others];
      held_.push_back({Address::of(family, {row.high, row.low}),
                       row.length == AddressRow::kNoLength ? length : std::int16_t{row.length}, Holder::card,
                       row.suggested ? AddressKind::suggested : AddressKind::typed, 0, row.row, s, row.card,
                       domain_of(index, row.card, s)});
    }
    one_length &= held_.back().length == length;
  }
  if (p && one_length && all_are_plain(held_[start].address, held_.back().address, *p)) return;
  marked_[group] = true;
  mark(std::span(held_).subspan(start), p);
}

std::uint32_t AddressesInUse::domain_elsewhere(const Index& index, std::uint32_t card,
                                               std::uint32_t segment_place) const {
  const std::uint32_t machine = facts_->card_machine[card];
  if ((facts_->card_marks[card] & CardMark::connected) == 0 || machine == kNowhere) return kNowhere;
  return domains_.inside(index.carrier_of(machine), segment_place);
}

void AddressesInUse::mark(std::span<HeldAddress> held, const std::optional<Prefix>& p) {
  const Bits128 net_bits = p ? ~Bits128::ones(p->network().bits() - p->length()) : Bits128{};
  const Bits128 network = p ? p->network().value() : Bits128{};
  const bool reserves = p && p->is_v4() && p->length() <= 30;
  for (HeldAddress& h : held) {
    const Bits128 host = (h.address.value() ^ network) & ~net_bits;
    if (is_link_local(h.address))
      h.marks = HeldMark::link_local;
    else if (!p)
      h.marks = HeldMark::no_prefix;
    else if ((h.address.value() & net_bits) != network)
      h.marks = HeldMark::outside;
    else if (reserves && (host.low == 0 || host.low == (~net_bits).low))
      h.marks = HeldMark::reserved;
    else if (h.length != p->length())
      h.marks = HeldMark::other_length;
    any_mark_ |= h.marks;
  }
}

void AddressesInUse::collect_ranges(const Index& index) {
  const Lab& lab = index.lab();
  std::vector<std::pair<std::uint32_t, std::uint32_t>> servers; // segment, card
  facts_->each_card(CardMark::server | CardMark::connected | CardMark::has_ranges, [&](std::uint32_t c) {
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
      const std::uint32_t machine = facts_->card_machine[server->second];
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
  const std::uint32_t s = c == kNowhere ? kNowhere : facts_->card_segment[c];
  if (s == kNowhere || domains_.of_card(c) != domains_.outside(s)) return false;
  const auto gateway = r.via->is_v4() ? gateway4_[s] : gateway6_[s];
  const auto p = prefix(s, r.via->family());
  return gateway == *r.via && p && p->contains(*r.via);
}

void AddressesInUse::judge_routes(const Index& index) {
  facts_->each_machine(MachineMark::routes, [&](std::uint32_t m) {
    const std::vector<Route>& routes = index.lab().machines[m].routes;
    if (!std::all_of(routes.begin(), routes.end(), [&](const Route& r) { return is_plain(index, r); }))
      odd_routes_.push_back(m);
  });
}

} // namespace snug
