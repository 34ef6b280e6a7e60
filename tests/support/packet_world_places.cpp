#include "tests/support/packet_world.h"

#include <algorithm>

namespace snug::test::sim {

// What is no machine: the PC's sockets, translators, LANs' routers, the outside.

namespace {

int length_in(const std::optional<Prefix>& p, const Address& a) { return p ? p->length() : a.bits(); }

} // namespace

const Lan* World::lan_of(const Segment& s) const {
  if (s.type != SegmentKind::bridged) return nullptr;
  for (const Lan& l : lab_.lans)
    if (l.id == s.lan) return &l;
  return nullptr;
}

std::optional<Prefix> World::prefix_of(const Segment& s, Family f) const {
  const auto& own = f == Family::v4 ? s.prefix4 : s.prefix6;
  const Lan* lan = lan_of(s);
  if (own || !lan) return own;
  return f == Family::v4 ? lan->prefix4 : lan->prefix6;
}

std::optional<Address> World::translator_of(const Segment& s) const {
  if (s.type != SegmentKind::nat) return std::nullopt;
  if (s.translator4 || !s.prefix4) return s.translator4;
  return s.prefix4->first_host();
}

std::optional<Address> World::gateway_of(const Segment& s) const {
  if (s.gateway4) return s.gateway4;
  const Lan* lan = lan_of(s);
  return lan ? lan->gateway4 : translator_of(s);
}

std::optional<Address> World::pc_address_of(const Segment& s) const {
  if (s.pc_address4 || s.type == SegmentKind::bridged || !s.prefix4) return s.pc_address4;
  const auto a = s.prefix4->network().plus(lab_.numbering.pc_socket);
  return a && s.prefix4->contains(*a) && !s.prefix4->is_reserved(*a) ? a : std::nullopt;
}

// A socket where the plan says so, a card on each LAN that no socket meets.
void World::add_pc() {
  open({Kind::pc, 0});
  std::vector<unsigned> met;
  const auto add = [&](AnyId id, std::uint32_t segment, unsigned in, int mtu) {
    const auto at = static_cast<unsigned>(cards.size());
    HostCard& c = new_card(id, segment, mtu);
    c.forwards4 = c.forwards6 = lab_.pc.forwards;
    plug(at, in);
    return at;
  };
  for (unsigned s = 0; s < lab_.segments.size(); ++s) {
    const Segment& segment = lab_.segments[s];
    if (!segment.pc_socket) continue;
    const unsigned at = add(segment.id, s, switch_in({}, segment.id), segment.mtu);
    const auto a4 = pc_address_of(segment);
    if (a4) give(at, a4, length_in(prefix_of(segment, Family::v4), *a4));
    if (const auto& a6 = segment.pc_address6) give(at, a6, length_in(prefix_of(segment, Family::v6), *a6));
    if (segment.type != SegmentKind::bridged) continue;
    if (!a4) askers_.push_back({at, {}});
    if (const Lan* lan = lan_of(segment))
      met.push_back(lans_.at({static_cast<unsigned>(lan - lab_.lans.data()), segment.vlan}));
  }
  for (const auto& [key, at] : lans_)
    if (key.second == 0 && std::find(met.begin(), met.end(), at) == met.end())
      askers_.push_back({add(lab_.lans[key.first].id, kNone, at, 1500), {}});
  const auto translates = [](const Segment& s) { return s.type == SegmentKind::nat; };
  if (lab_.lans.empty() && std::any_of(lab_.segments.begin(), lab_.segments.end(), translates))
    on_beyond_.push_back(add({Kind::pc, 0}, kNone, beyond_, 1500));
}

// Out into the LAN that the segment names, or the only one, or what lies beyond.
void World::add_translators() {
  for (unsigned s = 0; s < lab_.segments.size(); ++s) {
    const Segment& segment = lab_.segments[s];
    const auto inner = translator_of(segment);
    if (!inner) continue;
    open(segment.id);
    const auto in = static_cast<unsigned>(cards.size());
    new_card(segment.id, s, segment.mtu).forwards4 = true;
    plug(in, switch_in({}, segment.id));
    give(in, inner, length_in(segment.prefix4, *inner));
    unsigned lan = kNone;
    for (unsigned l = 0; l < lab_.lans.size(); ++l)
      if (lab_.lans[l].id == segment.lan || (lab_.lans.size() == 1 && !segment.lan)) lan = l;
    HostCard& out = new_card(segment.id, kNone, 1500);
    out.forwards4 = out.masquerades = true;
    plug(in + 1, lan == kNone ? beyond_ : lans_.at({lan, 0}));
    if (lan == kNone)
      on_beyond_.push_back(in + 1);
    else
      askers_.push_back({in + 1, {}});
  }
}

void World::add_lan_routers() {
  for (const auto& [key, at] : lans_) {
    const Lan& lan = lab_.lans[key.first];
    open(lan.id);
    const auto in = static_cast<unsigned>(cards.size());
    HostCard& inner = new_card(lan.id, kNone, 1500);
    inner.forwards4 = inner.forwards6 = true;
    plug(in, at);
    if (lan.gateway4) give(in, lan.gateway4, length_in(lan.prefix4, *lan.gateway4));
    if (lan.gateway6) give(in, lan.gateway6, length_in(lan.prefix6, *lan.gateway6));
    HostCard& out = new_card(lan.id, kNone, 1500);
    out.forwards4 = out.forwards6 = out.masquerades = true;
    plug(in + 1, beyond_);
    on_beyond_.push_back(in + 1);
  }
}

// 192.0.2.1 and 2001:db8:0:ff::1 stand for what lies beyond (RFC 5737, RFC 3849).
void World::add_outside() {
  open({Kind::outside, 0});
  const auto at = static_cast<unsigned>(cards.size());
  new_card({Kind::outside, 0}, kNone, 1500);
  plug(at, beyond_);
  const Address a4 = Address::v4(0xc000'0201), a6 = Address::v6(0x2001'0db8'0000'00ffULL, 1);
  give(at, a4, 32);
  give(at, a6, 128);
  std::int64_t next = 1;
  for (const unsigned c : on_beyond_) {
    give(c, a4.plus(next), 32);
    if (cards[c].forwards6) give(c, a6.plus(next), 128);
    ++next;
  }
  on_beyond_.push_back(at);
}

// Whether a short frame passes there and back.
bool World::hears(unsigned from, unsigned to) {
  const auto passes = [&](unsigned a, unsigned b, std::uint64_t mac) {
    Frame f;
    f.what = Frame::What::hello;
    f.from = cards[a].mac;
    f.to = mac;
    std::vector<unsigned> arrivals;
    wires.send(a, f, arrivals);
    return std::find(arrivals.begin(), arrivals.end(), b) != arrivals.end();
  };
  return passes(from, to, kEverybody) && passes(to, from, cards[from].mac);
}

// RFC 2131 4.3.1: each server offers from a range of the network it answers in.
std::vector<World::Server> World::servers() const {
  std::vector<Server> out;
  const auto add = [&](unsigned card, const Address& first, const Address& last) {
    if (!first.is_v4() || !last.is_v4() || last < first) return;
    int length = -1;
    for (const Held& h : cards[card].addresses)
      if (h.address.is_v4() && Prefix::of(h.address, h.length).contains(first)) length = h.length;
    if (length >= 0) out.push_back({card, {first, last}, length, {}});
  };
  for (unsigned c = 0; c < cards.size(); ++c) {
    const HostCard& card = cards[c];
    const Host& host = hosts[card.host];
    if (!host.on) continue;
    if (const Card* row = card.id.kind == Kind::card ? find<Card>(lab_, CardId{card.id.number}) : nullptr) {
      for (const RangeRow& r : row->ranges)
        if (row->dhcp == DhcpDuty::server) add(c, r.first, r.last);
    } else if (host.id.kind == Kind::segment && card.segment != kNone) {
      const Segment& s = lab_.segments[card.segment];
      if (!s.translator_dhcp) continue;
      for (const RangeRow& r : s.ranges) add(c, r.first, r.last);
      if (s.ranges.empty() && s.prefix4)
        out.push_back({c, {s.prefix4->first_host(), s.prefix4->last_host()}, s.prefix4->length(), {}});
    } else if (host.id.kind == Kind::lan && c == host.first_card) {
      const Lan& lan = *find<Lan>(lab_, LanId{host.id.number});
      if (lan.has_dhcp == Known::no || !lan.prefix4) continue;
      const Prefix& p = *lan.prefix4;
      for (const RangeRow& r : lan.pool) out.push_back({c, {r.first, r.last}, p.length(), lan.gateway4});
      if (lan.pool.empty()) out.push_back({c, {p.first_host(), p.last_host()}, p.length(), lan.gateway4});
    }
  }
  return out;
}

// In the order of the plan, the lowest address that nobody has.
void World::lease_all(const Chance& chance) {
  std::vector<Address> taken;
  for (const HostCard& c : cards)
    for (const Held& h : c.addresses) taken.push_back(h.address);
  const std::vector<Server> all = servers();
  for (Asker& a : askers_) {
    if (!wires.is_plugged(a.card)) continue;
    const auto free_in = [&](const Server& server) {
      std::optional<Address> free = server.range.first;
      while (free && std::find(taken.begin(), taken.end(), *free) != taken.end()) free = free->plus(1);
      return free && *free <= server.range.last ? free : std::nullopt;
    };
    std::vector<const Server*> offers;
    for (const Server& server : all) { // who has none left says nothing
      const bool again =
          std::any_of(offers.begin(), offers.end(), [&](const Server* o) { return o->card == server.card; });
      if (again || cards[server.card].host == cards[a.card].host || !free_in(server)) continue;
      if (hears(a.card, server.card)) offers.push_back(&server);
    }
    if (offers.empty()) continue;
    const Server& s = *offers[chance(offers.size())];
    const std::optional<Address> free = free_in(s);
    taken.push_back(*free);
    give(a.card, free, s.length);
    const bool of_lan = hosts[cards[s.card].host].id.kind == Kind::lan;
    const std::uint32_t segment = cards[a.card].segment;
    a.gateway = of_lan || segment == kNone ? s.gateway : gateway_of(lab_.segments[segment]);
    if (a.gateway && !Prefix::of(*free, s.length).contains(*a.gateway)) a.gateway.reset();
  }
  wires.forget();
}

// As people and their systems do: addresses, then what is on link, then next hops, then what was given.
void World::set_routes() {
  for (unsigned h = 0; h < hosts.size(); ++h) {
    HostView v = view(h);
    v.add_connected();
    const Machine* m =
        hosts[h].id.kind == Kind::machine ? find<Machine>(lab_, MachineId{hosts[h].id.number}) : nullptr;
    for (const bool on_link : {true, false})
      for (const Route& r : m ? m->routes : std::vector<Route>{}) {
        if (on_link == r.via.has_value()) continue;
        const auto it = card_of_.find(r.card);
        const bool own = it != card_of_.end() && cards[it->second].host == h;
        v.add_route(r, own ? it->second : kNone, r.card && !own);
      }
    for (const Asker& a : askers_)
      if (cards[a.card].host == h && a.gateway) {
        Route r;
        r.via = a.gateway;
        v.add_route(r, kNone, false);
      }
    for (const unsigned c : on_beyond_)
      if (cards[c].host == h) {
        v.insert({Prefix(), std::nullopt, c, 0, std::nullopt});
        v.insert({Prefix::of(Address::v6(0, 0), 0), std::nullopt, c, 1024, std::nullopt});
      }
  }
}

} // namespace snug::test::sim
