#include "core/addressing/plan.h"
#include "core/findings/network_rules.h"
#include "core/findings/network_tools.h"
#include "core/text/segment_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr std::array kFamilies{Family::v4, Family::v6};

std::optional<Address> gateway_of(const Context& c, std::uint32_t s, Family f) {
  return f == Family::v4 ? c.addresses.gateway4(s) : c.addresses.gateway6(s);
}

// Inside its prefix; a link-local one always is (RFC 4861 4.2 wants it so), and where no prefix is known
// there is nothing to judge.
bool fits(const Context& c, std::uint32_t s, const Address& gateway) {
  const auto p = c.addresses.prefix(s, gateway.family());
  return !p || p->contains(gateway) || is_link_local(gateway);
}

template <typename Report>
void each_gateway(const Context& c, Report report) {
  for (std::uint32_t s = 0; s < c.lab.segments.size(); ++s)
    for (const Family f : kFamilies)
      if (const auto gateway = gateway_of(c, s, f)) report(s, *gateway);
}

std::optional<HeldAddress> holder_of(const Context& c, std::uint32_t s, const Address& a) {
  const auto held = c.addresses.with(s, a);
  return held.empty() ? std::nullopt : std::optional(held.front());
}

bool forwards(const Card& card, Family f) { return f == Family::v4 ? card.forwards4 : card.forwards6; }

// The only address of a forwarding card on the segment.
std::optional<HeldAddress> only_router(const Context& c, std::uint32_t s, Family f) {
  std::optional<HeldAddress> router;
  for (const HeldAddress& h : c.addresses.on(s)) {
    const bool bad = (h.marks & (HeldMark::outside | HeldMark::reserved | HeldMark::link_local)) != 0;
    if (h.holder != Holder::card || h.address.family() != f || bad) continue;
    if (!forwards(c.lab.cards[h.card], f)) continue;
    if (router) return std::nullopt;
    router = h;
  }
  return router;
}

std::optional<Fix> use_only_router(const Context& c, std::uint32_t s, Family f) {
  const auto router = only_router(c, s, f);
  if (!router) return std::nullopt;
  Segment after = c.lab.segments[s];
  (f == Family::v4 ? after.gateway4 : after.gateway6) = router->address;
  return change_to(
      say(text::fix_gateway, to_text(router->address), holder_name(c, *router), segment_name(c, s)),
      c.lab.segments[s], after);
}

void check_outside(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_gateway(c, [&](std::uint32_t s, const Address& gateway) {
    if (fits(c, s, gateway)) return;
    out.push_back(found(Severity::error,
                        say(text::gateway_outside, to_text(gateway), segment_name(c, s),
                            to_text(*c.addresses.prefix(s, gateway.family()))),
                        say(text::gateway_outside_why), {c.lab.segments[s].id}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_outside(const Context& c, const Finding& f) {
  const std::uint32_t s = c.index.place(f.places[0]);
  for (const Family family : kFamilies)
    if (const auto g = gateway_of(c, s, family); g && !fits(c, s, *g)) return use_only_router(c, s, family);
  return std::nullopt;
}

void check_nobody(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_gateway(c, [&](std::uint32_t s, const Address& gateway) {
    if (!fits(c, s, gateway) || holder_of(c, s, gateway)) return;
    out.push_back(found(Severity::error, say(text::gateway_nobody, to_text(gateway), segment_name(c, s)),
                        say(text::gateway_nobody_why), {c.lab.segments[s].id}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_nobody(const Context& c, const Finding& f) {
  const std::uint32_t s = c.index.place(f.places[0]);
  for (const Family family : kFamilies)
    if (const auto g = gateway_of(c, s, family); g && fits(c, s, *g) && !holder_of(c, s, *g))
      return use_only_router(c, s, family);
  return std::nullopt;
}

void check_forwarding(const Context& c, std::vector<Finding>& out) {
  const std::size_t before = out.size();
  each_gateway(c, [&](std::uint32_t s, const Address& gateway) {
    const auto h = holder_of(c, s, gateway);
    if (!h || h->holder != Holder::card || forwards(c.lab.cards[h->card], gateway.family())) return;
    out.push_back(
        found(Severity::error, say(text::gateway_not_forwarding, holder_name(c, *h), segment_name(c, s)),
              say(text::gateway_not_forwarding_why), {c.lab.segments[s].id, c.lab.cards[h->card].id}));
  });
  drop_repeated(out, before);
}

std::optional<Fix> fix_forwarding(const Context& c, const Finding& f) {
  const std::uint32_t s = c.index.place(f.places[0]), card = c.index.place(f.places[1]);
  Card after = c.lab.cards[card];
  for (const Family family : kFamilies) {
    const auto gateway = gateway_of(c, s, family);
    const auto h = gateway ? holder_of(c, s, *gateway) : std::nullopt;
    if (h && h->card == card) (family == Family::v4 ? after.forwards4 : after.forwards6) = true;
  }
  return change_to(say(text::fix_forward, machine_name(c, card)), c.lab.cards[card], after);
}

bool is_default(const Route& r) { return r.to.length() == 0 && r.to.is_v4() && r.via; }

// Whether a machine holds the address by a card that forwards.
bool forwards_by(const Context& c, std::uint32_t machine, const Address& a) {
  for (const std::uint32_t k : c.index.cards_of(machine))
    for (const CardAddress& row : c.lab.cards[k].addresses)
      if (row.address == a) return c.lab.cards[k].forwards4;
  return false;
}

// Whether others send by it what is for nobody near: by a route of theirs or the gateway of their segment.
bool is_way_out(const Context& c, std::uint32_t machine) {
  for (const Machine& m : c.lab.machines)
    if (m.id != c.lab.machines[machine].id)
      for (const Route& r : m.routes)
        if (is_default(r) && forwards_by(c, machine, *r.via)) return true;
  for (const Segment& s : c.lab.segments)
    if (s.type == SegmentKind::isolated && s.gateway4 && forwards_by(c, machine, *s.gateway4)) return true;
  return false;
}

void check_way_back(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_card(CardMark::forwards4, [&](std::uint32_t k) {
    const std::uint32_t s = c.addresses.facts().card_segment[k], m = c.addresses.facts().card_machine[k];
    if (s == kNowhere || m == kNowhere || c.lab.segments[s].type != SegmentKind::nat) return;
    const Card& card = c.lab.cards[k];
    const auto& routes = c.lab.machines[m].routes;
    const bool leads = std::any_of(routes.begin(), routes.end(), [&](const Route& r) {
      const auto prefix = c.addresses.prefix4(s);
      return is_default(r) && prefix && prefix->contains(*r.via);
    });
    if (card.translates || !card.connected || !leads || !is_way_out(c, m)) return;
    const std::string who = machine_name(c, k), where = segment_name(c, s);
    out.push_back(found(Severity::caution, say(text::no_way_back, who, where),
                        say(text::no_way_back_why, who, where), {card.id, c.lab.segments[s].id}));
  });
}

std::optional<Fix> fix_way_back(const Context& c, const Finding& f) {
  const std::uint32_t k = c.index.place(f.places[0]), s = c.index.place(f.places[1]);
  Card after = c.lab.cards[k];
  after.translates = true;
  return change_to(say(text::fix_translate, machine_name(c, k), segment_name(c, s)), c.lab.cards[k], after);
}

void check_pc(const Context& c, std::vector<Finding>& out) {
  if (c.lab.pc.forwards) return;
  const std::size_t before = out.size();
  each_gateway(c, [&](std::uint32_t s, const Address& gateway) {
    const auto h = holder_of(c, s, gateway);
    if (!h || h->holder != Holder::pc_socket) return;
    out.push_back(found(Severity::error, say(text::pc_is_gateway, to_text(gateway), segment_name(c, s)),
                        say(text::pc_is_gateway_why), {AnyId{Kind::pc, 0}, c.lab.segments[s].id}));
  });
  drop_repeated(out, before);
}

// To the scheme's place, else to the last free host.
std::optional<Fix> fix_pc(const Context& c, const Finding& f) {
  const std::uint32_t s = c.index.place(f.places[1]);
  const auto prefix = c.addresses.prefix4(s);
  const auto socket = c.addresses.pc_address4(s);
  if (!prefix || !socket || socket != c.addresses.gateway4(s)) return std::nullopt;
  const auto is_open = [&](const std::optional<Address>& a) {
    if (!a || !prefix->contains(*a) || prefix->is_reserved(*a) || holder_of(c, s, *a)) return false;
    const auto ranges = c.addresses.ranges(s);
    return std::none_of(ranges.begin(), ranges.end(), [&a](const auto& r) { return r.range.contains(*a); });
  };
  auto wanted = prefix->network().plus(c.lab.numbering.pc_socket);
  if (!is_open(wanted)) {
    const Room room(c.index, c.addresses, s);
    const auto host = room.lowest_free(c.lab.numbering);
    wanted = host ? std::optional(room.address(*host)) : std::nullopt;
  }
  if (!wanted) return std::nullopt;
  Segment after = c.lab.segments[s];
  after.pc_address4 = wanted;
  return change_to(say(text::fix_move_pc, to_text(*wanted), segment_name(c, s)), c.lab.segments[s], after);
}

constexpr std::array kRules{
    Rule{"gateway-outside", Topic::addresses, Severity::error,
         "A gateway does not lie in its segment's prefix", "RFC 1122 3.3.1.1", check_outside, fix_outside},
    Rule{"gateway-nobody", Topic::addresses, Severity::error, "Nobody has a segment's gateway address",
         "RFC 1122 3.3.1", check_nobody, fix_nobody},
    Rule{"gateway-not-forwarding", Topic::addresses, Severity::error, "A gateway does not forward",
         "RFC 1122 3.3.1, RFC 1812 2.2.3", check_forwarding, fix_forwarding},
    Rule{"no-way-back", Topic::addresses, Severity::caution,
         "A router sends on to a translator that knows no way back", "RFC 3022 section 2", check_way_back,
         fix_way_back},
    Rule{"pc-is-gateway", Topic::addresses, Severity::error, "The PC's own address takes a gateway's place",
         kPracticeSource, check_pc, fix_pc},
};

} // namespace

std::span<const Rule> gateway_rules() { return kRules; }

} // namespace snug
