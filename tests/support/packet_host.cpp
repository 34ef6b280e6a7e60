#include "tests/support/packet_host.h"

#include <algorithm>

namespace snug::test::sim {

namespace {

constexpr int kConnected6 = 256, kStatic6 = 1024; // metrics
const Prefix kLinkLocals = Prefix::of(Address::v6(0xfe80'0000'0000'0000ULL, 0), 64);

bool holds(const Held& h, const Address& a) {
  return h.address.family() == a.family() && Prefix::of(h.address, h.length).contains(a);
}

// RFC 6724 2.2, and not more than the prefix of the address says.
int common(const Held& h, const Address& to) {
  int n = 0;
  while (n < h.length && Prefix::of(h.address, n + 1).contains(to)) ++n;
  return n;
}

bool has_network(const HostCard& c, const Prefix& p, std::size_t before) {
  return std::any_of(c.addresses.begin(), c.addresses.begin() + static_cast<std::ptrdiff_t>(before),
                     [&](const Held& o) {
                       return o.address.family() == p.family() && o.length == p.length() &&
                              Prefix::of(o.address, o.length) == p;
                     });
}

} // namespace

Address HostCard::link_local() const {
  return Address::v6(0xfe80'0000'0000'0000ULL, modified_eui64(Mac(mac)));
}

// Each address brings itself, then the broadcast address of its network (RFC 1122 3.2.1.3, RFC 3021).
Is HostView::type4(const Address& a, unsigned card, unsigned* where) const {
  for (unsigned c = h_.first_card; c < h_.end_card; ++c) {
    if (card != kNone && c != card) continue;
    for (const Held& h : cards_[c].addresses) {
      if (!h.address.is_v4()) continue;
      const bool own = h.address == a;
      if (!own && (h.length > 30 || Prefix::of(h.address, h.length).last() != a)) continue;
      if (where) *where = c;
      return own ? Is::own : Is::broadcast;
    }
  }
  return Is::elsewhere;
}

bool HostView::owns(const Address& a) const {
  if (a.is_v4()) return type4(a) == Is::own;
  for (unsigned c = h_.first_card; c < h_.end_card; ++c) {
    if (cards_[c].has_v6() && cards_[c].link_local() == a) return true;
    for (const Held& h : cards_[c].addresses)
      if (h.address == a) return true;
  }
  return false;
}

const HostRoute* HostView::route(const Address& to, unsigned card, unsigned near) const {
  const HostRoute* best = nullptr;
  for (const HostRoute& r : h_.routes) {
    if (!r.to.contains(to) || (card != kNone && r.card != card)) continue;
    if (!best || r.to.length() > best->to.length() ||
        (r.to.length() == best->to.length() &&
         (r.metric < best->metric || (r.metric == best->metric && r.card == near && best->card != near))))
      best = &r;
  }
  return best;
}

// The first of a card; better the first in whose network `near` is. A card without any: another card's.
std::optional<Address> HostView::source4(unsigned card, const std::optional<Address>& near) const {
  std::optional<Address> first;
  const HostCard& c = cards_[card];
  for (std::size_t i = 0; i < c.addresses.size(); ++i) {
    const Held& h = c.addresses[i];
    if (!h.address.is_v4() || has_network(c, Prefix::of(h.address, h.length), i)) continue;
    if (!near || holds(h, *near)) return h.address;
    if (!first) first = h.address;
  }
  for (unsigned o = h_.first_card; o < h_.end_card && !first; ++o)
    for (const Held& h : cards_[o].addresses)
      if (h.address.is_v4() && !first) first = h.address;
  return first;
}

std::optional<Address> HostView::source6(unsigned card, const Address& to) const {
  if (is_link_local(to)) return cards_[card].link_local();
  const Held* best = nullptr;
  const auto look = [&](const HostCard& c) {
    for (const Held& h : c.addresses)
      if (!h.address.is_v4() && !is_link_local(h.address) && (!best || common(h, to) > common(*best, to)))
        best = &h;
  };
  look(cards_[card]);
  for (unsigned c = h_.first_card; c < h_.end_card && !best; ++c) look(cards_[c]);
  return best ? best->address : cards_[card].link_local();
}

bool HostView::source_ok(unsigned card, const Address& from) const {
  if (!from.is_v4()) return true;
  const Is type = type4(from);
  if (type == Is::own) return false;
  if (h_.filter == ReverseFilter::off) return true;
  if (type == Is::broadcast) return false;
  const HostRoute* back = route(from);
  if (!back) return false;
  if (back->card == card) return true;
  const auto& own = cards_[card].addresses;
  const bool any = std::any_of(own.begin(), own.end(), [](const Held& h) { return h.address.is_v4(); });
  return any && h_.filter == ReverseFilter::loose;
}

void HostView::insert(const HostRoute& r) {
  for (const HostRoute& o : h_.routes)
    if (o.to == r.to && o.metric == r.metric) return;
  h_.routes.push_back(r);
}

void HostView::add_connected() {
  for (unsigned p = h_.first_card; p < h_.end_card; ++p) {
    const HostCard& c = cards_[p];
    for (std::size_t i = 0; i < c.addresses.size(); ++i) {
      const Held& h = c.addresses[i];
      const Prefix to = Prefix::of(h.address, h.length);
      if (h.length == h.address.bits() || has_network(c, to, i)) continue;
      HostRoute r{to, std::nullopt, p, h.address.is_v4() ? 0 : kConnected6, std::nullopt};
      if (h.address.is_v4()) r.source = h.address;
      h_.routes.push_back(r);
    }
    if (c.has_v6()) h_.routes.push_back({kLinkLocals, std::nullopt, p, kConnected6, std::nullopt});
  }
}

void HostView::add_route(const Route& row, unsigned card, bool card_is_missing) {
  Route r = row;
  if (r.via && !r.via->is_v4() && r.to == Prefix()) r.to = Prefix::of(Address::v6(0, 0), 0);
  if (card_is_missing || (!r.via && card == kNone) || (r.via && r.via->family() != r.to.family())) return;
  r.to.is_v4() ? add_route4(r, card) : add_route6(r, card);
}

// The next hop must be on a link: routes that have a next hop themselves do not count.
const HostRoute* HostView::route_to_gateway4(const Address& a, unsigned card) const {
  const HostRoute* best = nullptr;
  for (const HostRoute& r : h_.routes) {
    if (r.via || !r.to.contains(a) || (card != kNone && r.card != card)) continue;
    if (!best || r.to.length() > best->to.length() ||
        (r.to.length() == best->to.length() && r.metric < best->metric))
      best = &r;
  }
  return best;
}

void HostView::add_route4(const Route& r, unsigned card) {
  HostRoute made{r.to, r.via, card, r.metric, std::nullopt};
  if (!r.via) {
    made.source = source4(card, std::nullopt);
  } else if (r.on_link && card != kNone) {
    if (type4(*r.via) != Is::elsewhere) return;
  } else {
    unsigned where = kNone;
    const Is type = type4(*r.via, card, &where);
    if (type == Is::broadcast) return;
    if (type == Is::own) { // itself: everybody is taken to be on that link
      made.card = where;
      made.source = source4(where, r.via);
      made.via.reset();
    } else {
      const HostRoute* way = route_to_gateway4(*r.via, card);
      if (!way) return;
      made.card = way->card;
    }
  }
  if (!made.source) made.source = source4(made.card, r.via);
  insert(made);
}

void HostView::add_route6(const Route& r, unsigned card) {
  HostRoute made{r.to, r.via, card, r.metric == 0 ? kStatic6 : r.metric, std::nullopt};
  if (r.via && !(r.on_link && card != kNone)) {
    if (is_link_local(*r.via)) {
      if (card == kNone) return;
    } else {
      const HostRoute* way = owns(*r.via) ? nullptr : route(*r.via, card);
      if (!way || way->via) return;
      made.card = way->card;
    }
  } else if (r.via && owns(*r.via)) {
    return;
  }
  if (cards_[made.card].has_v6()) insert(made);
}

} // namespace snug::test::sim
