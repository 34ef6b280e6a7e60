#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/text/promise_text.h"
#include "core/text/route_text.h"
#include "core/text/segment_text.h"

#include <algorithm>
#include <array>
#include <map>

namespace snug {

namespace {

// Where a machine looks for a next hop.
struct Hop {
  std::uint32_t segment = kNowhere; // of the card that has it as a neighbour
  std::uint32_t domain = kNowhere;
  bool judged = true; // false: a card's own networks are not known
};

struct Link {
  std::uint32_t card = kNowhere;
  std::uint32_t segment = kNowhere;
  Prefix prefix;
};

std::uint32_t domain_on(const Context& c, std::uint32_t card, std::uint32_t segment) {
  if ((c.addresses.facts().card_marks[card] & CardMark::connected) == 0) return kNowhere;
  const std::uint32_t m = c.addresses.facts().card_machine[card];
  return c.addresses.domains().inside(m == kNowhere ? kNowhere : c.index.carrier_of(m), segment);
}

// The networks that a card is on, one of its own family; `known` is cleared where that cannot be told.
void add_links(const Context& c, std::uint32_t card, Family family, std::vector<Link>& links, bool& known) {
  const std::uint32_t own = c.addresses.facts().card_segment[card];
  for (const CardAddress& a : c.lab.cards[card].addresses) {
    if (a.address && a.address->family() != family) continue;
    if (a.address) {
      const std::uint32_t s = c.addresses.segment_for(c.index, card, *a.address);
      const auto p = s == kNowhere ? std::nullopt : c.addresses.prefix(s, family);
      const std::optional<int> length = a.length ? std::optional<int>(*a.length)
                                        : p      ? std::optional(p->length())
                                                 : std::nullopt;
      if (length && *length <= a.address->bits())
        links.push_back({card, s, Prefix::of(*a.address, *length)});
      else if (!is_link_local(*a.address))
        known = false;
    } else if (a.kind != AddressKind::none) {
      const auto p = own == kNowhere ? std::nullopt : c.addresses.prefix(own, family);
      if (p)
        links.push_back({card, own, *p});
      else
        known = false;
    }
  }
}

// Nothing: the next hop is on none of the machine's networks.
std::optional<Hop> hop_of(const Context& c, std::uint32_t machine, const Route& r) {
  std::vector<Link> links;
  bool known = true;
  const std::uint32_t route_card = c.index.place(r.card);
  for (const std::uint32_t card : c.index.cards_of(machine)) {
    if (route_card != kNowhere && card != route_card) continue;
    if (is_link_local(*r.via) || r.on_link) {
      const std::uint32_t s = c.addresses.facts().card_segment[card];
      if (route_card != kNowhere && s != kNowhere) return Hop{s, domain_on(c, card, s), true};
      known = false;
    }
    add_links(c, card, r.via->family(), links, known);
  }
  const Link* best = nullptr;
  for (const Link& l : links)
    if (l.prefix.contains(*r.via) && (!best || l.prefix.length() > best->prefix.length())) best = &l;
  if (best && best->segment != kNowhere)
    return Hop{best->segment, domain_on(c, best->card, best->segment), true};
  if (!known || best) return Hop{kNowhere, kNowhere, false};
  return std::nullopt;
}

Argument target(const Route& r) {
  return r.to.length() == 0 ? detail::argument(say(text::everything_else)) : Argument(to_text(r.to));
}

template <typename Report>
void each_hop(const Context& c, Report report) {
  for (const std::uint32_t m : c.addresses.odd_routes())
    for (const Route& r : c.lab.machines[m].routes)
      if (r.via) report(m, r, hop_of(c, m, r));
}

std::optional<HeldAddress> neighbour(const Context& c, const Hop& hop, const Address& a) {
  if (hop.segment == kNowhere) return std::nullopt;
  for (const HeldAddress& h : c.addresses.with(hop.segment, a))
    if (h.domain == hop.domain && hop.domain != kNowhere) return h;
  return std::nullopt;
}

// The first default routes of one family that have the same metric.
std::vector<Route> equal_defaults(const Machine& m) {
  std::map<std::pair<Family, std::int32_t>, std::vector<Route>> by;
  for (const Route& r : m.routes)
    if (r.to.length() == 0) by[{r.to.family(), r.metric}].push_back(r);
  for (auto& [key, routes] : by)
    if (routes.size() > 1) return std::move(routes);
  return {};
}

void check_defaults(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_machine(MachineMark::several_routes, [&](std::uint32_t m) {
    const std::vector<Route> equal = equal_defaults(c.lab.machines[m]);
    if (equal.empty()) return;
    const AnyId id = c.lab.machines[m].id;
    out.push_back(found(Severity::caution,
                        say(text::default_twice, c.name(id), Count{static_cast<std::int64_t>(equal.size())}),
                        say(text::default_twice_why), {id}));
  });
}

// The others of the same metric go.
std::optional<Fix> keep_default(const Context& c, const Finding& f, const Route& kept,
                                const std::vector<Route>& equal) {
  const Machine& now = c.lab.machines[c.index.place(f.places[0])];
  Machine after = now;
  bool is_kept = false; // one of two that are the same in everything
  std::erase_if(after.routes, [&](const Route& r) {
    if (r == kept && !std::exchange(is_kept, true)) return false;
    return std::find(equal.begin(), equal.end(), r) != equal.end();
  });
  return change_to(say(text::fix_keep_default, c.name(now.id), to_text(*kept.via)), now, after);
}

std::optional<Fix> fix_defaults(const Context& c, const Finding& f) {
  const std::vector<Route> equal = equal_defaults(c.lab.machines[c.index.place(f.places[0])]);
  return equal.empty() || !equal.front().via ? std::nullopt : keep_default(c, f, equal.front(), equal);
}

std::optional<Fix> other_fix_defaults(const Context& c, const Finding& f) {
  const std::vector<Route> equal = equal_defaults(c.lab.machines[c.index.place(f.places[0])]);
  if (equal.empty() || !equal.back().via || equal.back() == equal.front()) return std::nullopt;
  return keep_default(c, f, equal.back(), equal);
}

void check_outside(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_hop(c, [&](std::uint32_t m, const Route& r, const std::optional<Hop>& hop) {
    if (hop || r.on_link) return;
    const AnyId id = c.lab.machines[m].id;
    out.push_back(found(Severity::error, say(text::route_outside, c.name(id), target(r), to_text(*r.via)),
                        say(text::route_outside_why), {id}));
  });
  drop_repeated(out, before);
}

void check_nobody(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_hop(c, [&](std::uint32_t m, const Route& r, const std::optional<Hop>& hop) {
    if (!hop || !hop->judged || hop->domain == kNowhere || neighbour(c, *hop, *r.via)) return;
    // Who else is on a real LAN is not in the plan; the gateway has a finding of its own.
    const bool gateway =
        c.addresses.gateway4(hop->segment) == *r.via || c.addresses.gateway6(hop->segment) == *r.via;
    const bool reported = gateway && hop->domain == c.addresses.domains().outside(hop->segment);
    if (reported || c.lab.segments[hop->segment].type == SegmentKind::bridged) return;
    const AnyId id = c.lab.machines[m].id;
    out.push_back(
        found(Severity::error,
              say(text::route_nobody, c.name(id), target(r), to_text(*r.via), segment_name(c, hop->segment)),
              say(text::route_nobody_why, target(r), c.name(id)), {id}));
  });
  drop_repeated(out, before);
}

bool passes_on(const Context& c, const HeldAddress& h) {
  if (h.holder == Holder::pc_socket) return c.lab.pc.forwards;
  if (h.holder != Holder::card) return true;
  const Card& card = c.lab.cards[h.card];
  return h.address.is_v4() ? card.forwards4 : card.forwards6;
}

void check_forwarding(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_hop(c, [&](std::uint32_t m, const Route& r, const std::optional<Hop>& hop) {
    const auto h = hop && hop->judged ? neighbour(c, *hop, *r.via) : std::nullopt;
    if (!h || passes_on(c, *h)) return;
    const bool gateway =
        c.addresses.gateway4(h->segment) == *r.via || c.addresses.gateway6(h->segment) == *r.via;
    if (gateway) return;
    const AnyId id = c.lab.machines[m].id;
    out.push_back(found(Severity::error,
                        say(text::route_not_forwarding, c.name(id), target(r), holder_name(c, *h)),
                        say(text::route_not_forwarding_why, holder_name(c, *h)), {id, holder_id(c, *h)}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_forwarding(const Context& c, const Finding& f) {
  if (f.places[1].kind == Kind::pc) {
    Pc after = c.lab.pc;
    after.forwards = true;
    return change_to(say(text::fix_forward, c.name(f.places[1])), f.places[1], c.lab.pc, after);
  }
  const std::uint32_t place = c.index.place(f.places[1]);
  Card after = c.lab.cards[place];
  for (const Route& r : c.lab.machines[c.index.place(f.places[0])].routes)
    for (const CardAddress& a : c.lab.cards[place].addresses)
      if (r.via && a.address == r.via) (a.address->is_v4() ? after.forwards4 : after.forwards6) = true;
  return change_to(say(text::fix_forward, machine_name(c, place)), c.lab.cards[place], after);
}

bool has_route4(const Context& c, std::uint32_t machine) {
  if ((c.addresses.facts().machine_marks[machine] & MachineMark::routes) == 0) return false;
  const std::vector<Route>& routes = c.lab.machines[machine].routes;
  return std::any_of(routes.begin(), routes.end(),
                     [](const Route& r) { return r.to.family() == Family::v4; });
}

bool asks_dhcp(const Context& c, std::uint32_t machine) {
  const auto cards = c.index.cards_of(machine);
  return std::any_of(cards.begin(), cards.end(), [&](std::uint32_t card) {
    return (c.addresses.facts().card_marks[card] & CardMark::asks_dhcp) != 0;
  });
}

bool is_nat(const Context& c, std::uint32_t segment) {
  return c.lab.segments[segment].type == SegmentKind::nat;
}

// A gateway that somebody has.
std::optional<Address> gateway_there(const Context& c, std::uint32_t segment) {
  const auto gateway = c.addresses.gateway4(segment);
  return gateway && !c.addresses.with(segment, *gateway).empty() ? gateway : std::nullopt;
}

// A DHCP server names the gateway itself; who has any route was thought of.
bool lacks_default(const Context& c, const HeldAddress& h, const Address& gateway) {
  if (h.holder != Holder::card || h.domain == kNowhere || h.address == gateway) return false;
  const std::uint32_t m = c.addresses.facts().card_machine[h.card];
  return m != kNowhere && !has_route4(c, m) && !asks_dhcp(c, m);
}

// One finding a machine: where the way out is, else a gateway.
void check_none(const Context& c, std::vector<Finding>& out) {
  std::vector<bool> told(c.lab.machines.size());
  for (const bool nat : {true, false})
    for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s) {
      const auto gateway = is_nat(c, s) == nat ? gateway_there(c, s) : std::nullopt;
      if (!gateway) continue;
      for (const HeldAddress& h : c.addresses.on(s, Family::v4)) {
        if (!lacks_default(c, h, *gateway)) continue;
        const std::uint32_t m = c.addresses.facts().card_machine[h.card];
        if (told[m]) continue;
        told[m] = true;
        out.push_back(found(nat ? Severity::caution : Severity::note,
                            say(text::default_missing, machine_name(c, h.card), segment_name(c, s)),
                            say(text::default_missing_why, to_text(*gateway)),
                            {c.lab.machines[m].id, c.lab.segments[s].id}));
      }
    }
}

bool has_address_on(const Context& c, std::uint32_t card, std::uint32_t segment) {
  const auto held = c.addresses.on(segment, Family::v4);
  return std::any_of(held.begin(), held.end(), [&](const HeldAddress& h) {
    return h.holder == Holder::card && h.card == card && h.domain != kNowhere;
  });
}

// By the gateway there, unless the machine has an address on another segment of that kind with another one.
std::optional<Fix> fix_none(const Context& c, const Finding& f) {
  const std::uint32_t m = c.index.place(f.places[0]), segment = c.index.place(f.places[1]);
  const auto gateway = c.addresses.gateway4(segment);
  for (const std::uint32_t card : c.index.cards_of(m)) {
    const std::uint32_t s = c.index.segment_of_card(card);
    if (s == kNowhere || is_nat(c, s) != is_nat(c, segment) || !has_address_on(c, card, s)) continue;
    if (const auto other = gateway_there(c, s); other && other != gateway) return std::nullopt;
  }
  Machine after = c.lab.machines[m];
  after.routes.emplace_back().via = gateway;
  return change_to(say(text::fix_default_route, c.name(after.id), to_text(*gateway)), c.lab.machines[m],
                   after);
}

constexpr std::array kRules{
    Rule{"default-missing", Topic::addresses, Severity::caution,
         "A machine with a fixed address has no way beyond its segments", "RFC 1122 3.3.1", check_none,
         fix_none},
    Rule{"default-twice", Topic::addresses, Severity::caution, "A machine has several equal default routes",
         "RFC 1122 3.3.1", check_defaults, fix_defaults, other_fix_defaults},
    Rule{"route-outside", Topic::addresses, Severity::error,
         "A next hop is on none of the machine's networks", "RFC 1812 5.2.4.2", check_outside},
    Rule{"route-nobody", Topic::addresses, Severity::error, "Nobody has the address of a next hop",
         "RFC 1812 5.2.4", check_nobody},
    Rule{"route-not-forwarding", Topic::addresses, Severity::error, "A next hop does not forward",
         "RFC 1812 2.2.3", check_forwarding, fix_forwarding},
};

} // namespace

std::span<const Rule> route_rules() { return kRules; }

} // namespace snug
