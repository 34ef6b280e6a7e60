#include "core/gesture/duty.h"

#include "core/addressing/plan.h"
#include "core/gesture/fill.h"
#include "core/gesture/plug.h"
#include "core/text/hand_text.h"

#include <algorithm>

namespace snug {

namespace {

// A lab with what is known of its addresses.
struct Network {
  explicit Network(const Lab& of) : lab(of), index(of), in_use(index) {}
  const Lab& lab;
  Index index;
  AddressesInUse in_use;
};

// The first fixed address of a card on a segment.
std::optional<Address> address_of(const Network& k, const Card& card, SegmentId segment, Family family) {
  for (const CardAddress& a : card.addresses)
    if (a.address && a.address->family() == family && a.kind != AddressKind::dhcp &&
        k.in_use.segment_for(k.index, k.index.place(card.id), *a.address) == k.index.place(segment))
      return a.address;
  return std::nullopt;
}

Segment& segment_in(Lab& lab, SegmentId id) { return lab.segments[*place_of(lab, id)]; }
Card& card_in(Lab& lab, CardId id) { return lab.cards[*place_of(lab, id)]; }

bool serves(const Card& c, SegmentId s) {
  return c.dhcp == DhcpDuty::server && c.segment == s && c.connected;
}

// Default routes by one next hop, but for those of a machine.
template <typename Each>
void each_default(Lab& lab, const Address& via, MachineId but, Each each) {
  for (Machine& m : lab.machines)
    if (m.id != but)
      for (Route& r : m.routes)
        if (r.to.length() == 0 && r.via == via) each(r);
}

void become_gateway(const Network& k, Lab& after, Card& card, SegmentId segment, Family family) {
  const auto address = address_of(k, card, segment, family);
  if (!address) return;
  const bool v4 = family == Family::v4;
  const std::uint32_t place = k.index.place(segment);
  const auto before = v4 ? k.in_use.gateway4(place) : k.in_use.gateway6(place);
  Segment& s = segment_in(after, segment);
  (v4 ? s.gateway4 : s.gateway6) = address;
  (v4 ? card.forwards4 : card.forwards6) = true;
  if (before && before != address)
    each_default(after, *before, card.machine, [&](Route& r) { r.via = address; });
}

Result<Edit> give_gateway(const Network& k, const Card& card, SegmentId segment) {
  const std::string name = name_of(k.lab, card.id), on = name_of(k.lab, segment);
  if (holder_of(k.index, k.in_use, Duty::gateway, segment) == card.id)
    return fail(text::hand_is_gateway, name, on);
  if (!address_of(k, card, segment, Family::v4) && !address_of(k, card, segment, Family::v6))
    return fail(text::hand_no_address, name, on);
  Lab after = k.lab;
  for (const Family f : {Family::v4, Family::v6})
    become_gateway(k, after, card_in(after, card.id), segment, f);
  return detail::edit_between(k.lab, after, say(text::hand_gateway, name, on));
}

// What is given out there by cards and the translator is given up; the first one's ranges are returned.
std::vector<RangeRow> stop_dhcp(Lab& lab, SegmentId segment) {
  std::vector<RangeRow> ranges;
  const auto take = [&ranges](std::vector<RangeRow>& from) {
    if (ranges.empty()) ranges = from;
    from.clear();
  };
  for (Card& c : lab.cards) {
    if (!serves(c, segment)) continue;
    c.dhcp = DhcpDuty::none;
    take(c.ranges);
  }
  Segment& s = segment_in(lab, segment);
  if (s.type == SegmentKind::nat && s.translator_dhcp) {
    s.translator_dhcp = false;
    take(s.ranges);
  }
  return ranges;
}

Result<Edit> give_dhcp(const Network& k, const Card& card, SegmentId segment) {
  const std::string name = name_of(k.lab, card.id), on = name_of(k.lab, segment);
  if (serves(card, segment)) return fail(text::hand_is_dhcp, name, on);
  if (card.segment != segment) return fail(text::hand_not_plugged, name, on);
  if (!address_of(k, card, segment, Family::v4)) return fail(text::hand_no_address, name, on);
  Lab after = k.lab;
  std::vector<RangeRow> ranges = stop_dhcp(after, segment);
  if (ranges.empty()) {
    const Network then(after);
    const auto range = scheme_range(then.index, then.in_use, then.index.place(segment));
    if (!range) return fail(text::hand_no_range, on);
    RangeRow& row = ranges.emplace_back();
    row.first = range->first;
    row.last = range->last;
  }
  Card& server = card_in(after, card.id);
  server.dhcp = DhcpDuty::server;
  server.ranges = std::move(ranges);
  server.connected = true;
  return detail::edit_between(k.lab, after, say(text::hand_dhcp, name, on));
}

bool is_there(const Card& c, SegmentId s) {
  return c.segment == s ||
         std::any_of(c.trunk.begin(), c.trunk.end(), [s](const SegmentTag& t) { return t.segment == s; });
}

// Its card there; the first that has an address, else the first.
CardId card_there(const Network& k, MachineId machine, SegmentId segment) {
  CardId first;
  for (const std::uint32_t c : k.index.cards_of(k.index.place(machine))) {
    const Card& card = k.lab.cards[c];
    if (!is_there(card, segment)) continue;
    if (address_of(k, card, segment, Family::v4)) return card.id;
    if (!first) first = card.id;
  }
  return first;
}

} // namespace

CardId holder_of(const Index& index, const AddressesInUse& in_use, Duty duty, SegmentId segment) {
  const std::uint32_t place = index.place(segment);
  if (duty == Duty::dhcp) {
    for (const Card& c : index.lab().cards)
      if (serves(c, segment)) return c.id;
    return {};
  }
  for (const auto& gateway : {in_use.gateway4(place), in_use.gateway6(place)}) {
    if (!gateway) continue;
    for (const HeldAddress& h : in_use.with(place, *gateway))
      if (h.holder == Holder::card) return index.lab().cards[h.card].id;
  }
  return {};
}

Result<Edit> give_duty(const Lab& lab, Duty duty, SegmentId segment, CardId id) {
  const Network k(lab);
  const Card& card = *k.index.card(id);
  if (!is_there(card, segment)) return fail(text::hand_not_plugged, name_of(lab, id), name_of(lab, segment));
  return duty == Duty::gateway ? give_gateway(k, card, segment) : give_dhcp(k, card, segment);
}

Result<Edit> give_duty(const Lab& lab, Duty duty, SegmentId segment, MachineId machine) {
  if (const CardId card = card_there(Network(lab), machine, segment))
    return give_duty(lab, duty, segment, card);
  Lab after = lab;
  const auto added = add_card(lab, machine, segment);
  if (!added) return fail(added.error());
  if (const auto done = detail::take_in(after, added->edit); !done) return fail(done.error());
  auto edit = give_duty(after, duty, segment, CardId{added->id.number});
  if (const auto done = detail::take_in(after, edit); !done) return fail(done.error());
  return detail::edit_between(lab, after, std::move(edit->label));
}

Edit take_duty(const Lab& lab, Duty duty, SegmentId segment) {
  Lab after = lab;
  if (duty == Duty::dhcp) {
    stop_dhcp(after, segment);
  } else {
    segment_in(after, segment).gateway4.reset();
    segment_in(after, segment).gateway6.reset();
  }
  if (after == lab) return {};
  return detail::edit_between(
      lab, after,
      say(duty == Duty::dhcp ? text::hand_no_dhcp : text::hand_no_gateway, name_of(lab, segment)));
}

std::vector<Message> duty_says(const Lab& before, const Lab& after, Duty duty, SegmentId segment) {
  const Network then(after);
  const CardId holder = holder_of(then.index, then.in_use, duty, segment);
  if (!holder) return {};
  const Card& card = *then.index.card(holder);
  std::vector<Message> out;
  if (duty == Duty::dhcp) {
    for (const RangeRow& r : card.ranges)
      out.push_back(say(text::hand_gives_out, to_text(r.first), to_text(r.last)));
    return out;
  }
  auto address = address_of(then, card, segment, Family::v4);
  if (!address) address = address_of(then, card, segment, Family::v6);
  if (!address) return {};
  out.push_back(say(text::hand_gateway_is, to_text(*address), name_of(after, segment)));
  std::int64_t routes = 0;
  for (std::size_t m = 0; m < before.machines.size(); ++m)
    routes += before.machines[m].routes != after.machines[m].routes ? 1 : 0;
  if (routes > 0) out.push_back(say(text::hand_routes_follow, Count{routes}));
  return out;
}

} // namespace snug
