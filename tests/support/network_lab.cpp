#include "tests/support/network_lab_maker.h"

#include <algorithm>

namespace snug::test {

namespace {

constexpr int kNobody = 200; // no host has this number

} // namespace

MachineId NetworkMaker::add_machine(const char* kind, MachineId carrier) {
  Machine m;
  m.name = kind + std::to_string(lab_.machines.size() + 1);
  m.carrier = carrier;
  return add(std::move(m)).id;
}

std::size_t NetworkMaker::segment_of(const Card& c) const {
  return static_cast<std::size_t>(std::find_if(lab_.segments.begin(), lab_.segments.end(),
                                               [&](const Segment& s) { return s.id == c.segment; }) -
                                  lab_.segments.begin());
}

void NetworkMaker::give(Card& c, std::size_t segment, int host) {
  const bool routes = std::find(routers_.begin(), routers_.end(), c.machine) != routers_.end();
  if (routes || !ask(c, segment)) {
    CardAddress& a = c.addresses.emplace_back();
    a.address = v4(net(segment), host);
    a.length = 24;
  }
  if (!v6_) return;
  CardAddress& b = c.addresses.emplace_back();
  b.address = v6(net(segment), host);
  b.length = 64;
}

Card& NetworkMaker::add_card(MachineId m, std::size_t segment) {
  Card c;
  c.machine = m;
  c.segment = lab_.segments[segment].id;
  Card& made = add(std::move(c));
  made.mac = Mac(0x0200'0000'0000ULL | made.id.number);
  return made;
}

std::vector<std::size_t> NetworkMaker::pick_segments(std::size_t count) {
  std::vector<std::size_t> all(lab_.segments.size());
  for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
  for (std::size_t i = all.size(); i > 1; --i) std::swap(all[i - 1], all[r_.below(i)]);
  all.resize(std::min(count, all.size()));
  return all;
}

void NetworkMaker::add_routers() {
  const std::size_t count = r_.below(4) + (lab_.segments.size() > 1 ? 1 : 0);
  for (std::size_t i = 0; i < count; ++i) {
    routers_.push_back(add_machine("router", {}));
    const bool translates = r_.chance(20), forwards6 = r_.chance(85);
    bool first = true;
    for (const std::size_t s : pick_segments(2 + r_.below(3))) {
      Card& c = add_card(routers_.back(), s);
      c.forwards4 = !r_.chance(5);
      c.forwards6 = forwards6;
      c.translates = translates && first;
      first = false;
      give(c, s, router_host(i, s));
    }
  }
}

void NetworkMaker::add_default(MachineId m, CardId card, std::size_t segment) {
  const bool is_nat = lab_.segments[segment].type == SegmentKind::nat;
  if ((routers_.empty() && !is_nat && net(segment) != kLanNet) || r_.chance(12)) return;
  Machine& machine =
      *std::find_if(lab_.machines.begin(), lab_.machines.end(), [&](const Machine& x) { return x.id == m; });
  std::vector<int> here;
  for (const Card& c : lab_.cards)
    if (c.segment == lab_.segments[segment].id)
      for (std::size_t i = 0; i < routers_.size(); ++i)
        if (c.machine == routers_[i]) here.push_back(router_host(i, segment));
  if (is_nat) here.push_back(kTranslator);
  if (net(segment) == kLanNet) here.push_back(1);
  const int gateway = here.empty() || r_.chance(4) ? kNobody : here[r_.below(here.size())];
  Route& r = machine.routes.emplace_back();
  r.via = v4(net(segment), gateway);
  if (r_.chance(30)) r.card = card;
  if (r_.chance(10)) r.metric = 10 * static_cast<std::int32_t>(1 + r_.below(3));
  if (!v6_) return;
  Route& other = machine.routes.emplace_back();
  other.to = Prefix::of(Address::v6(0, 0), 0);
  other.via = v6(net(segment), gateway);
}

void NetworkMaker::add_hypervisors() {
  const std::size_t count = r_.below(4);
  for (std::size_t i = 0; i < count; ++i) {
    const bool deep = !hypervisors_.empty() && r_.chance(25);
    const MachineId carrier = deep ? hypervisors_[r_.below(hypervisors_.size())] : MachineId{};
    hypervisors_.push_back(add_machine("rack", carrier));
    const MachineId me = hypervisors_.back();
    bool first = true;
    for (const std::size_t s : pick_segments(1 + r_.below(3))) {
      Card& c = add_card(me, s);
      if (r_.chance(85)) c.carries.emplace_back().segment = c.segment;
      if (r_.chance(10)) c.own_mac_only = true;
      const CardId id = c.id;
      if (r_.chance(60)) give(c, s, 10 + next_host_[net(s)]++);
      if (first) add_default(me, id, s);
      first = false;
    }
  }
}

void NetworkMaker::add_hosts() {
  const std::size_t most = std::max(size_.machines, lab_.machines.size() + 2) - lab_.machines.size();
  const std::size_t count = 2 + r_.below(most);
  for (std::size_t i = 0; i < count && lab_.machines.size() < size_.machines; ++i) {
    const bool inner = !hypervisors_.empty() && r_.chance(45);
    const MachineId me =
        add_machine("host", inner ? hypervisors_[r_.below(hypervisors_.size())] : MachineId{});
    bool first = true;
    for (const std::size_t s : pick_segments(r_.chance(75) ? 1 : 2)) {
      Card& c = add_card(me, s);
      const CardId id = c.id;
      give(c, s, 10 + next_host_[net(s)]++);
      if (first || r_.chance(20)) add_default(me, id, s);
      first = false;
    }
  }
}

// Routes between routers that share a segment, so that most but not all ways exist.
void NetworkMaker::route_routers() {
  for (const MachineId router : routers_)
    for (const Card& own : std::vector<Card>(lab_.cards)) {
      if (own.machine != router) continue;
      const std::size_t shared = segment_of(own);
      for (const Card& c : std::vector<Card>(lab_.cards)) {
        const auto other = std::find(routers_.begin(), routers_.end(), c.machine);
        if (other == routers_.end() || *other == router || segment_of(c) != shared) continue;
        for (const Card& far : std::vector<Card>(lab_.cards)) {
          if (far.machine != *other || far.segment == own.segment || r_.chance(25)) continue;
          Machine& me = *std::find_if(lab_.machines.begin(), lab_.machines.end(),
                                      [&](const Machine& m) { return m.id == router; });
          const std::size_t to = segment_of(far);
          const int host = router_host(static_cast<std::size_t>(other - routers_.begin()), segment_of(c));
          Route& r = me.routes.emplace_back();
          r.to = Prefix::of(v4(net(to), 0), 24);
          r.via = v4(net(shared), host);
          if (!v6_) continue;
          Route& r6 = me.routes.emplace_back();
          r6.to = Prefix::of(v6(net(to), 0), 64);
          r6.via = v6(net(shared), host);
        }
      }
    }
}

Lab NetworkMaker::make() {
  v6_ = r_.chance(50);
  for (std::size_t i = 1 + r_.below(size_.segments); i > 0; --i) {
    Segment s;
    s.name = "S" + std::to_string(i);
    s.passes_other_macs = Known::yes;
    const std::size_t place = lab_.segments.size();
    if (r_.chance(15)) {
      s.type = SegmentKind::nat;
      s.prefix4 = Prefix::of(v4(place, 0), 24);
      s.translator4 = v4(place, kTranslator);
    }
    add(std::move(s));
  }
  add_lan();
  add_routers();
  add_servers();
  add_hypervisors();
  add_hosts();
  add_sockets();
  route_routers();
  if (r_.chance(75)) spoil_addresses();
  if (r_.chance(75)) spoil_cards();
  spoil_machines();
  unplug_twins();
  return std::move(lab_);
}

Lab network_lab(Random& r, NetworkSize size) { return NetworkMaker(r, size).make(); }

} // namespace snug::test
