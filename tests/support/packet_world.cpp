#include "tests/support/packet_world.h"

#include <algorithm>

namespace snug::test::sim {

namespace {

constexpr std::uint64_t kOtherMacs = 0x0a00'0000'0000ULL; // of cards whose MAC the plan does not say

} // namespace

World::World(const Lab& lab, ExerciseId exercise, const Chance& chance) : lab_(lab) {
  add_switches();
  add_machines(find<Exercise>(lab, exercise));
  add_pc();
  add_translators();
  add_lan_routers();
  add_outside();
  lease_all(chance);
  set_routes();
}

unsigned World::host_of(AnyId id) const {
  for (unsigned h = 0; h < hosts.size(); ++h)
    if (hosts[h].id == id) return h;
  return kNone;
}

unsigned World::place_of(SegmentId id) const {
  for (unsigned s = 0; s < lab_.segments.size(); ++s)
    if (lab_.segments[s].id == id) return s;
  return kNone;
}

// Switched on, and so are all that carry it.
bool World::is_on(const Machine& m, const Exercise* e) const {
  if (e && std::find(e->on.begin(), e->on.end(), m.id) == e->on.end()) return false;
  const Machine* carrier = find<Machine>(lab_, m.carrier);
  return !carrier || is_on(*carrier, e);
}

bool World::has_guest_on(MachineId carrier, SegmentId s, bool running) const {
  return std::any_of(lab_.cards.begin(), lab_.cards.end(), [&](const Card& c) {
    const Machine* m = find<Machine>(lab_, c.machine);
    if (c.segment != s || !m || m->carrier != carrier) return false;
    return !running || (c.connected && hosts[host_of(m->id)].on);
  });
}

unsigned World::switch_in(MachineId carrier, SegmentId s) const {
  const auto it = switches_.find({carrier.number, s.number});
  return it == switches_.end() ? kNone : it->second;
}

// Own MACs only: where the segment says so, and over the air (MODEL, Networks).
bool World::lets_other_macs(const Segment& s) const {
  const Lan* lan = lan_of(s);
  return s.passes_other_macs != Known::no && !(lan && lan->medium == Medium::wireless);
}

// One for what lies beyond, one for each LAN and VLAN, one for each segment outside and in each hypervisor
// with a guest on it.
void World::add_switches() {
  constexpr int kAny = 0xffff;
  beyond_ = wires.add_switch(1500);
  const auto lan_switch = [&](unsigned lan, int vlan) {
    const auto [it, is_new] = lans_.try_emplace({lan, vlan}, 0U);
    if (is_new) it->second = wires.add_switch(kAny);
    return it->second;
  };
  for (unsigned l = 0; l < lab_.lans.size(); ++l) lan_switch(l, 0);
  for (const Segment& s : lab_.segments) {
    const unsigned made = switches_[{0U, s.id.number}] = wires.add_switch(s.mtu);
    if (const Lan* lan = lan_of(s))
      wires.join(made, lan_switch(static_cast<unsigned>(lan - lab_.lans.data()), s.vlan), std::nullopt);
    for (const Machine& m : lab_.machines)
      if (has_guest_on(m.id, s.id, false)) switches_[{m.id.number, s.id.number}] = wires.add_switch(s.mtu);
  }
}

unsigned World::open(AnyId id) {
  Host& h = hosts.emplace_back();
  h.id = id;
  h.first_card = h.end_card = static_cast<unsigned>(cards.size());
  return static_cast<unsigned>(hosts.size() - 1);
}

HostCard& World::new_card(AnyId id, std::uint32_t segment, int mtu) {
  HostCard& c = cards.emplace_back();
  c.id = id;
  c.host = static_cast<unsigned>(hosts.size() - 1);
  c.segment = segment;
  c.mtu = mtu;
  c.mac = kOtherMacs + cards.size();
  hosts.back().end_card = static_cast<unsigned>(cards.size());
  return c;
}

void World::plug(unsigned card, unsigned in, const Card* c) {
  if (!hosts[cards[card].host].on || in == kNone) return;
  Wires::Plug p;
  p.mtu = cards[card].mtu;
  if (c) p.separated = c->separated;
  if (c && c->own_mac_only) p.only = cards[card].mac;
  wires.plug(card, in, p);
}

void World::give(unsigned card, const std::optional<Address>& a, int length) {
  if (a && (a->is_v4() || cards[card].has_v6())) cards[card].addresses.push_back({*a, length});
}

void World::add_machines(const Exercise* e) {
  for (const Machine& m : lab_.machines) {
    Host& h = hosts[open(m.id)];
    h.on = is_on(m, e);
    h.filter = m.reverse_filter;
    for (const Card& c : lab_.cards)
      if (c.machine == m.id) add_card(c);
  }
  // Switches are joined when all know who runs; where two cards carry a segment, by one that has a cable.
  for (const bool connected : {true, false})
    for (const Card& c : lab_.cards)
      if (c.connected == connected && card_of_.count(c.id) != 0) join(c);
}

void World::join(const Card& c) {
  const unsigned at = card_of_.at(c.id);
  const HostCard& card = cards[at];
  if (!hosts[card.host].on) return;
  const MachineId machine{hosts[card.host].id.number};
  const unsigned inner = switch_in(machine, c.segment);
  const unsigned outer = switch_in(find<Machine>(lab_, machine)->carrier, c.segment);
  const bool carries = std::any_of(c.carries.begin(), c.carries.end(),
                                   [&](const SegmentTag& t) { return t.segment == c.segment; });
  if (!carries || inner == kNone || !joined_.insert(inner).second) {
    if (c.connected) plug(at, outer, &c);
    return;
  }
  if (c.connected) {
    Wires::Plug p{card.mtu, c.separated, std::nullopt};
    if (c.own_mac_only || !lets_other_macs(lab_.segments[card.segment])) p.only = card.mac;
    wires.join(inner, outer, p);
  }
  // Without any cable the switch is down.
  if (c.connected || has_guest_on(machine, c.segment, true)) wires.seat(at, inner, card.mac);
}

void World::add_card(const Card& c) {
  const unsigned s = place_of(c.segment);
  const auto at = static_cast<unsigned>(cards.size());
  HostCard& made = new_card(c.id, s, c.mtu.value_or(s == kNone ? 1500 : lab_.segments[s].mtu));
  if (c.mac) made.mac = c.mac->bits();
  made.forwards4 = c.forwards4;
  made.forwards6 = c.forwards6;
  made.masquerades = c.translates;
  card_of_[c.id] = at;
  for (const CardAddress& a : c.addresses) {
    if (a.kind == AddressKind::dhcp) askers_.push_back({at, {}});
    if (!a.address || (a.kind != AddressKind::typed && a.kind != AddressKind::suggested)) continue;
    const auto p = s == kNone ? std::nullopt : prefix_of(lab_.segments[s], a.address->family());
    give(at, a.address, a.length.value_or(p ? p->length() : a.address->bits()));
  }
}

} // namespace snug::test::sim
