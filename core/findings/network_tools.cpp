#include "core/findings/network_tools.h"

#include "core/addressing/plan.h"
#include "core/text/address_text.h"

#include <algorithm>

namespace snug {

AnyId holder_id(const Context& c, const HeldAddress& h) {
  switch (h.holder) {
  case Holder::card:
    return c.lab.cards[h.card].id;
  case Holder::pc_socket:
    return {Kind::pc, 0};
  case Holder::translator:
    return c.lab.segments[h.segment].id;
  case Holder::lan_router:
    return c.lab.segments[h.segment].lan;
  }
  return {};
}

std::string segment_name(const Context& c, std::uint32_t segment_place) {
  const Segment& s = c.lab.segments[segment_place];
  return s.name.empty() ? c.name(s.id) : s.name;
}

std::uint32_t cut_carrier(const Context& c, std::uint32_t machine, SegmentId s) {
  for (const std::uint32_t place : c.index.cards_of(machine)) {
    const Card& card = c.lab.cards[place];
    const auto is_it = [s](const SegmentTag& t) { return t.segment == s; };
    if (!card.connected && std::any_of(card.carries.begin(), card.carries.end(), is_it)) return place;
  }
  return kNowhere;
}

std::string machine_name(const Context& c, std::uint32_t card_place) {
  const std::uint32_t m = c.addresses.facts().card_machine[card_place];
  if (m == kNowhere) return c.name(c.lab.cards[card_place].machine);
  const Machine& machine = c.lab.machines[m];
  return machine.name.empty() ? c.name(machine.id) : machine.name;
}

std::string card_name(const Context& c, std::uint32_t card_place) {
  const std::uint32_t m = c.addresses.facts().card_machine[card_place];
  const bool several = m != kNowhere && c.index.cards_of(m).size() > 1;
  return several || m == kNowhere ? c.name(c.lab.cards[card_place].id) : machine_name(c, card_place);
}

Argument holder_name(const Context& c, const HeldAddress& h) {
  switch (h.holder) {
  case Holder::card:
    return machine_name(c, h.card);
  case Holder::pc_socket:
    return c.name({Kind::pc, 0});
  case Holder::translator:
    return detail::argument(say(text::translator_of, segment_name(c, h.segment)));
  case Holder::lan_router: {
    const Lan* lan = c.index.lan(c.lab.segments[h.segment].lan);
    return lan->router.empty() ? detail::argument(say(text::router_of, c.name(lan->id)))
                               : Argument(lan->router);
  }
  }
  return {};
}

std::string short_address(const Address& a, const std::optional<Prefix>& prefix) {
  const bool last_octet = a.is_v4() && prefix && prefix->length() >= 24 && prefix->contains(a);
  return last_octet ? "." + std::to_string(a.as_u32() & 0xffU) : to_text(a);
}

std::string range_text(const AddressRange& r) { return to_text(r.first) + "–" + to_text(r.last); }

void drop_repeated(std::vector<Finding>& out, std::size_t first) {
  if (out.size() < first + 2) return;
  std::vector<std::size_t> order(out.size() - first);
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = first + i;
  std::stable_sort(order.begin(), order.end(),
                   [&out](std::size_t a, std::size_t b) { return out[a].places < out[b].places; });
  std::vector<bool> gone(order.size(), false);
  for (std::size_t i = 1; i < order.size(); ++i)
    if (out[order[i]].places == out[order[i - 1]].places) gone[order[i] - first] = true;
  std::size_t to = first;
  for (std::size_t i = first; i < out.size(); ++i) {
    if (gone[i - first]) continue;
    if (to != i) out[to] = std::move(out[i]);
    ++to;
  }
  out.resize(to);
}

bool is_formed(const RangeRow& r) { return r.first.family() == r.last.family() && r.first <= r.last; }

std::optional<RangeRow> formed(const RangeRow& r) {
  RangeRow out = r;
  if (r.last == Address{}) out.last = r.first;
  if (out.first.family() != out.last.family()) return std::nullopt;
  if (out.last < out.first) std::swap(out.first, out.last);
  return out;
}

std::optional<Fix> move_address(const Context& c, const HeldAddress& held) {
  if (held.holder != Holder::card || held.segment == kNowhere) return std::nullopt;
  const Card& card = c.lab.cards[held.card];
  const SegmentId segment = c.lab.segments[held.segment].id;
  const auto next = held.address.is_v4() ? next_free(c.index, c.addresses, segment, card.machine)
                                         : next_free6(c.index, c.addresses, segment, card.machine);
  if (!next) return std::nullopt;
  Card after = card;
  after.addresses[held.row].address = next;
  after.addresses[held.row].length.reset();
  const auto prefix = c.addresses.prefix(held.segment, next->family());
  return change_to(say(text::fix_use_address, short_address(*next, prefix), machine_name(c, held.card)), card,
                   after);
}

} // namespace snug
