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

AddressesInUse::AddressesInUse(const Index& index) : index_(&index), facts_(&index.facts()), domains_(index) {
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

// Places of those of segments, then of those of cards.
Groups AddressesInUse::by_group(const Index& index) const {
  const std::vector<AddressRow>& rows = facts_->addresses;
  const auto segments = static_cast<std::uint32_t>(prefix4_.size());
  std::vector<std::uint32_t> groups(others_.size() + rows.size());
  auto to = groups.begin();
  for (const HeldAddress& h : others_) *to++ = group_of(h.segment, !h.address.is_v4());
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

std::uint8_t marks_of(const HeldAddress& h, const std::optional<Prefix>& p) {
  if (is_link_local(h.address)) return HeldMark::link_local;
  if (!p) return HeldMark::no_prefix;
  if (!p->contains(h.address)) return HeldMark::outside;
  if (p->is_reserved(h.address)) return HeldMark::reserved;
  return h.length == p->length() ? std::uint8_t{0} : HeldMark::other_length;
}

} // namespace

std::optional<Prefix> AddressesInUse::prefix_of_group(std::uint32_t group) const {
  if (group / 2 == prefix4_.size()) return std::nullopt;
  return prefix(group / 2, group % 2 == 0 ? Family::v4 : Family::v6);
}

// Keys of one group's addresses. Gives whether all have the length of their prefix.
bool AddressesInUse::fill(std::uint32_t group, std::span<const std::uint32_t> places,
                          std::vector<WideKey>& keys) const {
  const auto p = prefix_of_group(group);
  const int length = p ? p->length() : 0;
  const auto others = static_cast<std::uint32_t>(others_.size());
  const std::span<const AddressRow> rows = facts_->addresses;
  bool one_length = p.has_value();
  keys.clear();
  for (const std::uint32_t place : places)
    if (place < others) {
      const HeldAddress& h = others_[place];
      one_length &= h.length == length;
      keys.push_back({h.address.high(), h.address.low(), place, group});
    } else {
      const AddressRow& row = rows[place - others];
      one_length &= row.length == AddressRow::kNoLength || row.length == length;
      keys.push_back({row.high, row.low, place, group});
    }
  return one_length;
}

// One group after the other: sorted and noted while it is near.
void AddressesInUse::sort_and_hold(const Index& index) {
  others_ = held_by_segments(index);
  const Groups groups = by_group(index);
  const std::uint32_t count = group_of(static_cast<std::uint32_t>(prefix4_.size()) + 1, false);
  ConflictSweep sweep(packed_ranges());
  std::vector<WideKey> keys;
  order_.reserve(others_.size() + facts_->addresses.size());
  marked_.resize(count);
  for (std::uint32_t g = 0; g < count; ++g) {
    const bool one_length = fill(g, groups.of(g), keys);
    sweep.add(keys);
    const auto first = static_cast<std::uint32_t>(order_.size());
    for (const WideKey& k : keys) order_.push_back(k.place);
    const Family family = g % 2 == 0 ? Family::v4 : Family::v6;
    const auto address = [family](const WideKey& k) { return Address::of(family, {k.high, k.low}); };
    if (keys.empty() ||
        (one_length && all_are_plain(address(keys.front()), address(keys.back()), *prefix_of_group(g))))
      continue;
    marked_[g] = true;
    for (std::uint32_t at = first; at < order_.size(); ++at) any_mark_ |= held(at).marks;
  }
  conflicts_ = std::move(sweep).take();
}

HeldAddress AddressesInUse::held(std::uint32_t place) const {
  const std::uint32_t at = order_[place];
  HeldAddress h;
  if (at < others_.size()) {
    h = others_[at];
  } else {
    const AddressRow& row = facts_->addresses[at - others_.size()];
    h.address = row.address();
    h.kind = row.suggested ? AddressKind::suggested : AddressKind::typed;
    h.row = row.row;
    h.segment = segment_of(*index_, row);
    h.card = row.card;
    h.domain = domain_of(*index_, row.card, h.segment);
  }
  const auto p = h.segment == kNowhere ? std::nullopt : prefix(h.segment, h.address.family());
  if (at >= others_.size()) {
    const std::uint8_t typed = facts_->addresses[at - others_.size()].length;
    h.length = static_cast<std::int16_t>(typed != AddressRow::kNoLength ? typed : p ? p->length() : 0);
  }
  h.marks = marks_of(h, p);
  return h;
}

std::uint32_t AddressesInUse::domain_elsewhere(const Index& index, std::uint32_t card,
                                               std::uint32_t segment_place) const {
  const std::uint32_t machine = facts_->card_machine[card];
  if ((facts_->card_marks[card] & CardMark::connected) == 0 || machine == kNowhere) return kNowhere;
  return domains_.inside(index.carrier_of(machine), segment_place);
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

AddressesInUse::List AddressesInUse::with(std::uint32_t segment_place, const Address& a) const {
  const List held = on(segment_place);
  const auto is_before = [&](const HeldAddress& h) { return h.address < a; };
  const auto first = std::partition_point(held.begin(), held.end(), is_before);
  auto end = first;
  while (end != held.end() && (*end).address == a) ++end;
  return held.part(static_cast<std::uint32_t>(first - held.begin()), static_cast<std::uint32_t>(end - first));
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
