#include "tests/support/network_lab.h"

#include <algorithm>
#include <map>

namespace snug::test {

namespace {

class Maker {
 public:
  Maker(Random& r, NetworkSize size) : r_(r), size_(size) {}
  Lab make();

 private:
  template <typename E>
  E& add(E e) {
    e.id.number = lab_.facts.next_id++;
    list_of<E>(lab_).push_back(std::move(e));
    return list_of<E>(lab_).back();
  }
  MachineId add_machine(const char* kind, MachineId carrier);
  Card& add_card(MachineId, std::size_t segment);
  void give(Card&, std::size_t segment, int host);
  void add_routers();
  void add_hypervisors();
  void add_hosts();
  std::vector<std::size_t> pick_segments(std::size_t count);
  void add_default(MachineId, CardId, std::size_t segment);
  void route_routers();
  std::size_t segment_of(const Card& c) const;
  void spoil_addresses();
  void spoil_cards();
  void spoil_machines();
  Card& any_card() { return lab_.cards[r_.below(lab_.cards.size())]; }
  Machine& any_machine() { return lab_.machines[r_.below(lab_.machines.size())]; }

  Random& r_;
  NetworkSize size_;
  Lab lab_;
  std::vector<MachineId> routers_, hypervisors_;
  std::map<std::size_t, int> next_host_;
  bool v6_ = false;
};

Address v4(std::size_t segment, int host) {
  return Address::v4(0x0a00'0000U | static_cast<std::uint32_t>(segment + 1) << 8U |
                     static_cast<std::uint32_t>(host));
}
Address v6(std::size_t segment, int host) {
  return Address::v6(0xfd00'0000'0000'0000ULL | (segment + 1) << 32U, static_cast<std::uint64_t>(host));
}

constexpr int kTranslator = 250;

MachineId Maker::add_machine(const char* kind, MachineId carrier) {
  Machine m;
  m.name = kind + std::to_string(lab_.machines.size() + 1);
  m.carrier = carrier;
  return add(std::move(m)).id;
}

std::size_t Maker::segment_of(const Card& c) const {
  return static_cast<std::size_t>(std::find_if(lab_.segments.begin(), lab_.segments.end(),
                                               [&](const Segment& s) { return s.id == c.segment; }) -
                                  lab_.segments.begin());
}

void Maker::give(Card& c, std::size_t segment, int host) {
  CardAddress& a = c.addresses.emplace_back();
  a.address = v4(segment, host);
  a.length = 24;
  if (!v6_) return;
  CardAddress& b = c.addresses.emplace_back();
  b.address = v6(segment, host);
  b.length = 64;
}

Card& Maker::add_card(MachineId m, std::size_t segment) {
  Card c;
  c.machine = m;
  c.segment = lab_.segments[segment].id;
  Card& made = add(std::move(c));
  made.mac = Mac(0x0200'0000'0000ULL | made.id.number);
  return made;
}

std::vector<std::size_t> Maker::pick_segments(std::size_t count) {
  std::vector<std::size_t> all(lab_.segments.size());
  for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
  for (std::size_t i = all.size(); i > 1; --i) std::swap(all[i - 1], all[r_.below(i)]);
  all.resize(std::min(count, all.size()));
  return all;
}

void Maker::add_routers() {
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
      give(c, s, static_cast<int>(i) + 1);
    }
  }
}

void Maker::add_default(MachineId m, CardId card, std::size_t segment) {
  const bool is_nat = lab_.segments[segment].type == SegmentKind::nat;
  if ((routers_.empty() && !is_nat) || r_.chance(12)) return;
  Machine& machine =
      *std::find_if(lab_.machines.begin(), lab_.machines.end(), [&](const Machine& x) { return x.id == m; });
  std::vector<int> here;
  for (const Card& c : lab_.cards)
    if (c.segment == lab_.segments[segment].id)
      for (std::size_t i = 0; i < routers_.size(); ++i)
        if (c.machine == routers_[i]) here.push_back(static_cast<int>(i) + 1);
  if (is_nat) here.push_back(kTranslator);
  const int gateway = here.empty() || r_.chance(4) ? 200 : here[r_.below(here.size())];
  Route& r = machine.routes.emplace_back();
  r.via = v4(segment, gateway);
  if (r_.chance(30)) r.card = card;
  if (r_.chance(10)) r.metric = 10 * static_cast<std::int32_t>(1 + r_.below(3));
  if (!v6_) return;
  Route& other = machine.routes.emplace_back();
  other.to = Prefix::of(Address::v6(0, 0), 0);
  other.via = v6(segment, gateway);
}

void Maker::add_hypervisors() {
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
      if (r_.chance(60)) give(c, s, 10 + next_host_[s]++);
      if (first) add_default(me, id, s);
      first = false;
    }
  }
}

void Maker::add_hosts() {
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
      give(c, s, 10 + next_host_[s]++);
      if (first || r_.chance(20)) add_default(me, id, s);
      first = false;
    }
  }
}

// Routes between routers that share a segment, so that most but not all ways exist.
void Maker::route_routers() {
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
          const int host = static_cast<int>(other - routers_.begin()) + 1;
          Route& r = me.routes.emplace_back();
          r.to = Prefix::of(v4(to, 0), 24);
          r.via = v4(shared, host);
          if (!v6_) continue;
          Route& r6 = me.routes.emplace_back();
          r6.to = Prefix::of(v6(to, 0), 64);
          r6.via = v6(shared, host);
        }
      }
    }
}

void Maker::spoil_addresses() {
  for (std::size_t i = r_.below(4); i > 0; --i) {
    Card& c = any_card();
    if (c.addresses.empty()) continue;
    CardAddress& a = c.addresses[r_.below(c.addresses.size())];
    switch (r_.below(4)) {
    case 0:
      a.length = a.address->is_v4() ? static_cast<std::int32_t>(r_.between(8, 32))
                                    : static_cast<std::int32_t>(r_.between(24, 128));
      break;
    case 1: { // an address that somebody has already
      const Card& d = any_card();
      if (!d.addresses.empty()) a.address = d.addresses.front().address;
      a.length = a.address->is_v4() ? 24 : 64;
      break;
    }
    case 2: { // a second network on the card
      CardAddress extra = a;
      const std::size_t s = r_.below(lab_.segments.size());
      extra.address = v4(s, 100 + static_cast<int>(r_.below(100)));
      extra.length = 24;
      c.addresses.push_back(extra);
      break;
    }
    default:
      c.addresses.clear();
    }
  }
}

void Maker::spoil_cards() {
  constexpr std::int32_t kSizes[5] = {1280, 1400, 1500, 9000, 1000};
  for (std::size_t i = r_.below(5); i > 0; --i) {
    Card& c = any_card();
    switch (r_.below(6)) {
    case 0:
      c.connected = false;
      break;
    case 1:
      c.carries.clear();
      break;
    case 2:
      c.mtu = kSizes[r_.below(5)];
      break;
    case 3:
      c.separated = true;
      break;
    case 4:
      c.forwards4 = !c.forwards4;
      break;
    default:
      lab_.segments[r_.below(lab_.segments.size())].mtu = kSizes[r_.below(4)];
    }
  }
}

void Maker::spoil_machines() {
  Exercise& e = add(Exercise{});
  for (const Machine& m : lab_.machines)
    if (!r_.chance(4)) e.on.push_back(m.id);
  for (std::size_t i = r_.below(4); i > 0; --i) {
    Machine& m = any_machine();
    switch (r_.below(4)) {
    case 0:
      m.reverse_filter = r_.chance(50) ? ReverseFilter::strict : ReverseFilter::loose;
      break;
    case 1:
      if (!m.routes.empty())
        m.routes.erase(m.routes.begin() + static_cast<std::ptrdiff_t>(r_.below(m.routes.size())));
      break;
    case 2: { // on link, or by a next hop that is no neighbour
      Route& r = m.routes.emplace_back();
      const std::size_t s = r_.below(lab_.segments.size());
      r.to = Prefix::of(v4(s, 0), 24);
      for (const Card& c : lab_.cards)
        if (c.machine == m.id) r.card = c.id;
      if (r_.chance(50)) r.via = v4(r_.below(lab_.segments.size()), 1);
      r.on_link = r.via && r_.chance(50);
      if (!r.card) m.routes.pop_back();
      break;
    }
    default:
      for (Card& c : lab_.cards)
        if (c.machine == m.id) c.forwards4 = c.forwards6 = true;
    }
  }
}

Lab Maker::make() {
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
  add_routers();
  add_hypervisors();
  add_hosts();
  route_routers();
  if (r_.chance(75)) spoil_addresses();
  if (r_.chance(75)) spoil_cards();
  spoil_machines();
  return std::move(lab_);
}

} // namespace

Lab network_lab(Random& r, NetworkSize size) { return Maker(r, size).make(); }

} // namespace snug::test
