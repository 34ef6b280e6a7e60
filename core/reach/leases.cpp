#include "core/reach/builder.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::int32_t kSmall = 60; // octets: fits everywhere

} // namespace

// Ranges that lie in a network of the server's own card: others are for relays.
void ReachBuilder::add_ranges(std::vector<Lease>& out, std::uint32_t port,
                              const std::vector<RangeRow>& ranges) const {
  for (const RangeRow& r : ranges) {
    if (!r.first.is_v4() || !r.last.is_v4() || r.last < r.first) continue;
    Lease l{port, {r.first, r.last}, -1};
    for (const ReachAddress& a : b_.addresses)
      if (a.port == port && a.address.is_v4() && Prefix::of(a.address, a.length).contains(r.first))
        l.length = a.length;
    out.push_back(l);
  }
}

// Of running machines' cards, translators and LANs. Length -1: only for those who ask through a relay.
std::vector<ReachBuilder::Lease> ReachBuilder::servers() const {
  std::vector<Lease> out;
  for (std::uint32_t p = 0; p < b_.ports.size(); ++p) {
    const ReachPort& port = b_.ports[p];
    if (!n_.nodes_[port.node].on || port.piece == kNowhere) continue;
    if (const Card* card = index_.card(CardId{port.id.kind == Kind::card ? port.id.number : 0})) {
      if (card->dhcp == DhcpDuty::server) add_ranges(out, p, card->ranges);
    } else if (n_.nodes_[port.node].id.kind == Kind::segment && port.segment != kNowhere) {
      const Segment& s = lab_.segments[port.segment];
      if (!s.translator_dhcp) continue;
      if (!s.ranges.empty())
        add_ranges(out, p, s.ranges);
      else if (const auto prefix = held_.prefix4(port.segment))
        out.push_back({p, {prefix->first_host(), prefix->last_host()}, prefix->length()});
    } else if (n_.nodes_[port.node].id.kind == Kind::lan && port.piece != beyond()) {
      const Lan& lan = lab_.lans[index_.place(port.id)];
      if (lan.has_dhcp == Known::no || !lan.prefix4) continue;
      if (lan.pool.empty())
        out.push_back({p, {lan.prefix4->first_host(), lan.prefix4->last_host()}, lan.prefix4->length()});
      for (const RangeRow& r : lan.pool)
        if (r.first.is_v4() && r.last.is_v4() && r.first <= r.last)
          out.push_back({p, {r.first, r.last}, lan.prefix4->length()});
    }
  }
  return out;
}

// Frames pass both ways.
bool ReachBuilder::answers(std::uint32_t client, std::uint32_t server) const {
  return b_.ports[client].node != b_.ports[server].node &&
         n_.frame(client, server, kSmall) == FrameStop::none &&
         n_.frame(server, client, kSmall) == FrameStop::none;
}

bool ReachBuilder::has_free(Lease& l) const {
  std::optional<Address> a = std::max(l.range.first, l.next);
  while (a && *a <= l.range.last && taken_.count(*a) != 0) a = a->plus(1);
  if (a) l.next = *a;
  return a && *a <= l.range.last;
}

// One for each server that answers, directly or through a relay; one without a free address says nothing.
std::vector<ReachBuilder::Offer> ReachBuilder::offers_for(std::uint32_t port,
                                                          std::vector<Lease>& servers) const {
  std::vector<Offer> out;
  const auto add = [&](Lease& l, std::int32_t length) {
    const auto same = [&](const Offer& o) { return o.lease->server == l.server; };
    if (std::none_of(out.begin(), out.end(), same) && has_free(l)) out.push_back({&l, length});
  };
  for (Lease& l : servers)
    if (l.length >= 0 && answers(port, l.server)) add(l, l.length);
  for (const std::uint32_t r : relays_) {
    if (!answers(port, r)) continue;
    const Card* card = index_.card(CardId{b_.ports[r].id.number});
    for (const ReachAddress& a : b_.addresses) {
      if (a.port != r || !a.address.is_v4()) continue;
      const Prefix here = Prefix::of(a.address, a.length);
      for (Lease& l : servers) {
        const ReachNode& node = n_.nodes_[b_.ports[l.server].node];
        const auto is_it = [&](const ReachAddress& s) {
          return s.address == *card->relay_to && s.port >= node.first_port && s.port < node.end_port;
        };
        if (here.contains(l.range.first) && std::any_of(b_.addresses.begin(), b_.addresses.end(), is_it))
          add(l, a.length);
      }
    }
  }
  return out;
}

void ReachBuilder::find_relays() {
  for (std::uint32_t r = 0; r < b_.ports.size(); ++r) {
    const ReachPort& relay = b_.ports[r];
    const Card* card = index_.card(CardId{relay.id.kind == Kind::card ? relay.id.number : 0});
    if (card && card->dhcp == DhcpDuty::relay && card->relay_to && n_.nodes_[relay.node].on)
      relays_.push_back(r);
  }
}

// The first free address of the range.
void ReachBuilder::lease(std::uint32_t port, const Offer& offer) {
  const Address a = offer.lease->next;
  taken_.insert(a);
  give(a, offer.length, port);
  const ReachPort& server = b_.ports[offer.lease->server];
  const std::uint32_t s = b_.ports[port].segment;
  std::optional<Address> gateway;
  if (server.id.kind == Kind::lan)
    gateway = lab_.lans[index_.place(server.id)].gateway4;
  else if (s != kNowhere)
    gateway = held_.gateway4(s);
  if (gateway && Prefix::of(a, offer.length).contains(*gateway))
    b_.given.gateways.emplace_back(port, *gateway);
}

void ReachBuilder::lease_all() {
  const auto wants = [&](const ReachPort& p) {
    return p.wants_lease && n_.nodes_[p.node].on && p.piece != kNowhere;
  };
  if (std::none_of(b_.ports.begin(), b_.ports.end(), wants)) return;
  std::vector<Lease> all = servers();
  find_relays();
  for (const ReachAddress& a : b_.addresses)
    if (a.address.is_v4()) taken_.insert(a.address);
  for (std::uint32_t p = 0; p < b_.ports.size(); ++p) {
    if (!wants(b_.ports[p])) continue;
    const std::vector<Offer> offers = offers_for(p, all);
    if (!offers.empty()) lease(p, offers[choices_.choose(offers.size())]);
  }
}

// Of /64, as systems need it (RFC 4862 5.5.3).
std::vector<Prefix> ReachBuilder::advertised_by(const ReachPort& router) const {
  std::vector<Prefix> out;
  const auto add = [&](const Prefix& p) {
    if (p.length() == 64 && std::find(out.begin(), out.end(), p) == out.end()) out.push_back(p);
  };
  if (router.id.kind == Kind::lan) {
    if (const auto& p = lab_.lans[index_.place(router.id)].prefix6) add(*p);
    return out;
  }
  if (router.segment != kNowhere)
    if (const auto p = held_.prefix6(router.segment)) add(*p);
  const auto place = static_cast<std::uint32_t>(&router - b_.ports.data());
  for (const ReachAddress& a : b_.addresses)
    if (out.empty() && a.port == place && !a.address.is_v4() && !is_link_local(a.address))
      add(Prefix::of(a.address, a.length));
  return out;
}

void ReachBuilder::advertise_all() {
  if ((index_.facts().any_card & CardMark::slaac) == 0) return;
  std::vector<std::uint32_t> routers;
  for (std::uint32_t r = 0; r < b_.ports.size(); ++r)
    if (b_.ports[r].advertises && n_.nodes_[b_.ports[r].node].on && b_.ports[r].mtu >= kLeastMtu6)
      routers.push_back(r);
  for (std::uint32_t p = 0; p < b_.ports.size(); ++p) {
    const ReachPort& port = b_.ports[p];
    if (!port.wants_advertised || n_.nodes_[port.node].forwards6 || port.mtu < kLeastMtu6) continue;
    if (port.piece == kNowhere || !n_.nodes_[port.node].on) continue;
    for (const std::uint32_t r : routers) {
      const ReachPort& router = b_.ports[r];
      if (router.node == port.node || n_.frame(r, p, kSmall) != FrameStop::none) continue;
      for (const Prefix& prefix : advertised_by(router))
        give(Address::v6(prefix.network().high(), modified_eui64(Mac(port.mac))), 64, p);
      b_.given.advertisers.emplace_back(p, r);
    }
  }
}

void ReachBuilder::sort_addresses() {
  const auto by_port = [](const ReachAddress& a, const ReachAddress& b) { return a.port < b.port; };
  if (in_order_) return; // the ports know theirs
  std::stable_sort(b_.addresses.begin(), b_.addresses.end(), by_port);
  std::uint32_t at = 0;
  for (std::uint32_t p = 0; p < b_.ports.size(); ++p) {
    b_.ports[p].first_address = at;
    while (at < b_.addresses.size() && b_.addresses[at].port == p) ++at;
    b_.ports[p].end_address = at;
  }
}

} // namespace snug
