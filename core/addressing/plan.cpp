#include "core/addressing/plan.h"

#include "core/addressing/host_plan.h"
#include "core/addressing/prefix_plan.h"
#include "core/text/plan_text.h"

#include <algorithm>

namespace snug {

namespace {

struct RangeWish {
  std::uint32_t segment = kNowhere;
  std::uint32_t card = kNowhere; // kNowhere: the segment's translator
};

std::vector<RangeWish> servers_without_range(const Index& index, const AddressesInUse& in_use) {
  const Lab& lab = index.lab();
  std::vector<RangeWish> out;
  for (std::uint32_t s = 0; s < lab.segments.size(); ++s)
    if (lab.segments[s].type == SegmentKind::nat && lab.segments[s].translator_dhcp &&
        lab.segments[s].ranges.empty())
      out.push_back({s, kNowhere});
  in_use.facts().each_card(CardMark::server | CardMark::has_segment, [&](std::uint32_t c) {
    const std::uint32_t s = in_use.facts().card_segment[c];
    if (lab.cards[c].ranges.empty() && lab.segments[s].type != SegmentKind::bridged) out.push_back({s, c});
  });
  return out;
}

HostSpan longest_free_run(const Room& room, HostSpan window) {
  HostSpan best{0, -1};
  for (std::int64_t host = window.first; host <= window.last;) {
    const auto first = room.lowest_free(host, window.last);
    if (!first) break;
    std::int64_t last = *first;
    while (last < window.last && room.is_free(last + 1)) ++last;
    if (last - *first > best.last - best.first) best = {*first, last};
    host = last + 1;
  }
  return best;
}

std::optional<AddressRange> range_in(const Room& room, const Numbering& scheme) {
  if (!room.has_prefix() || room.size() < 8) return std::nullopt;
  HostSpan window{scheme.dhcp_first, std::min<std::int64_t>(scheme.dhcp_last, room.size() - 2)};
  if (window.first > window.last) window = {room.size() / 2, room.size() - 2};
  const HostSpan run = longest_free_run(room, window);
  if (run.last < run.first) return std::nullopt;
  return AddressRange{room.address(run.first), room.address(run.last)};
}

// One server a segment: a second one would answer as well, which is a finding of its own.
void plan_ranges(Lab& lab) {
  const Index index(lab);
  const AddressesInUse in_use(index);
  std::vector<bool> served(lab.segments.size(), false);
  for (const RangeWish& w : servers_without_range(index, in_use)) {
    if (served[w.segment] || !in_use.ranges(w.segment).empty()) continue;
    const auto range = range_in(Room(index, in_use, w.segment, Room::Suggested::free), lab.numbering);
    if (!range) continue;
    served[w.segment] = true;
    RangeRow row;
    row.first = range->first;
    row.last = range->last;
    (w.card == kNowhere ? lab.segments[w.segment].ranges : lab.cards[w.card].ranges).push_back(row);
  }
}

Result<void> plan_addresses(Lab& lab) {
  const Index index(lab);
  const AddressesInUse in_use(index);
  auto hosts = plan_hosts(index, in_use);
  if (!hosts) return fail(hosts.error());
  for (const Slot& s : hosts->slots) {
    const Prefix prefix = *in_use.prefix4(s.segment);
    const Address address = Address::v4(prefix.network().as_u32() + static_cast<std::uint32_t>(*s.host));
    std::vector<CardAddress>& rows = lab.cards[s.card].addresses;
    if (s.row == Slot::kNewRow) rows.emplace_back().kind = AddressKind::suggested;
    CardAddress& row = s.row == Slot::kNewRow ? rows.back() : rows[s.row];
    row.address = address;
    row.length.reset();
  }
  for (const auto& [segment, gateway] : hosts->gateways) lab.segments[segment].gateway4 = gateway;
  return {};
}

void plan_macs(Lab& lab) {
  for (Card& c : lab.cards)
    if (c.mac_source == MacSource::derived && !c.mac) c.mac = derived_mac(lab.facts.uid, 0, c.id.number);
}

bool uses_ipv6(const Lab& lab) {
  return std::any_of(lab.segments.begin(), lab.segments.end(),
                     [](const Segment& s) { return s.prefix6.has_value(); });
}

std::optional<std::int64_t> number_of_machine(const Index& index, const AddressesInUse& in_use,
                                              std::uint32_t machine, const Room& room) {
  for (const std::uint32_t c : index.cards_of(machine))
    for (const CardAddress& a : index.lab().cards[c].addresses) {
      if (!a.address || !a.address->is_v4()) continue;
      const std::uint32_t s = in_use.segment_for(index, c, *a.address);
      const auto prefix = s == kNowhere ? std::nullopt : in_use.prefix4(s);
      if (!prefix || !prefix->contains(*a.address)) continue;
      const std::int64_t number = static_cast<std::int64_t>(a.address->as_u32()) - prefix->network().as_u32();
      if (room.is_free(number)) return number;
    }
  return std::nullopt;
}

} // namespace

Result<Edit> suggest_addresses(const Lab& lab, const PlanOptions& options) {
  Lab plan = lab;
  const bool ipv6 = options.ipv6 || uses_ipv6(lab);
  if (options.ipv6 && !plan.facts.local_prefix6 && !plan.facts.uid.empty())
    plan.facts.local_prefix6 = unique_local_prefix(plan.facts.uid);
  if (options.prefixes) {
    if (auto ok = plan_prefixes4(plan, options.by_need); !ok) return fail(ok.error());
    if (ipv6 && (options.ipv6 || plan.facts.local_prefix6))
      if (auto ok = plan_prefixes6(plan); !ok) return fail(ok.error());
  }
  if (options.ranges) plan_ranges(plan);
  if (options.addresses) {
    if (auto ok = plan_addresses(plan); !ok) return fail(ok.error());
    if (ipv6) plan_hosts6(plan);
  }
  if (options.derived_macs) plan_macs(plan);
  Edit edit = difference(lab, plan);
  edit.label = say(text::plan_label);
  return edit;
}

bool can_suggest(const Index& index, const AddressesInUse& in_use, std::uint32_t segment_place) {
  const auto prefix = in_use.prefix4(segment_place);
  if (!prefix || !prefix->is_v4()) return false;
  const Segment& s = index.lab().segments[segment_place];
  if (s.type != SegmentKind::bridged) return true;
  const Lan* lan = index.lan(s.lan);
  return lan && (lan->has_dhcp == Known::no || !lan->pool.empty());
}

std::optional<Address> next_free(const Index& index, const AddressesInUse& in_use, SegmentId segment,
                                 MachineId machine) {
  const std::uint32_t s = index.place(segment), m = index.place(machine);
  if (s == kNowhere || !can_suggest(index, in_use, s)) return std::nullopt;
  const Room room(index, in_use, s);
  auto number = m == kNowhere ? std::nullopt : number_of_machine(index, in_use, m, room);
  if (!number) number = room.lowest_free(index.lab().numbering);
  if (!number) return std::nullopt;
  return room.address(*number);
}

std::optional<Address> next_free6(const Index& index, const AddressesInUse& in_use, SegmentId segment,
                                  MachineId machine) {
  const std::uint32_t s = index.place(segment), m = index.place(machine);
  const auto prefix = s == kNowhere ? std::nullopt : in_use.prefix6(s);
  if (!prefix || m == kNowhere) return std::nullopt;
  const auto held = in_use.on(s);
  const auto is_free = [&](const Address& a) {
    return in_use.gateway6(s) != a &&
           std::none_of(held.begin(), held.end(), [&a](const HeldAddress& h) { return h.address == a; });
  };
  const auto next4 = next_free(index, in_use, segment, machine);
  std::int64_t number = next4 ? next4->as_u32() - in_use.prefix4(s)->network().as_u32()
                              : static_cast<std::int64_t>(index.lab().numbering.fixed_first);
  for (std::size_t tries = 0; tries <= held.size(); ++tries, ++number)
    if (const auto a = same_digits6(*prefix, number); a && is_free(*a)) return a;
  return std::nullopt;
}

std::optional<AddressRange> scheme_range(const Index& index, const AddressesInUse& in_use,
                                         std::uint32_t segment_place) {
  return range_in(Room(index, in_use, segment_place), index.lab().numbering);
}

} // namespace snug
