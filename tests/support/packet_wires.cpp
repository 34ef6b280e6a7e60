#include "tests/support/packet_wires.h"

#include <algorithm>

namespace snug::test::sim {

namespace {

constexpr int kTag = 4; // a VLAN tag more than the MTU passes

} // namespace

unsigned Wires::add_switch(int port_mtu) {
  switches_.emplace_back().mtu = port_mtu;
  return static_cast<unsigned>(switches_.size() - 1);
}

void Wires::plug(unsigned card, unsigned in, const Plug& p) {
  Switch& s = switches_[in];
  Port& port = s.ports.emplace_back();
  port.card = card;
  port.room = std::min(p.mtu, s.mtu);
  port.separated = p.separated;
  port.only = p.only;
  seats_.resize(std::max<std::size_t>(seats_.size(), card + std::size_t{1}), {kNone, kNone});
  seats_[card] = {in, static_cast<unsigned>(s.ports.size() - 1)};
}

void Wires::seat(unsigned card, unsigned in, std::uint64_t mac) {
  plug(card, in, {});
  Port& port = switches_[in].ports.back();
  port.limited = false;
  port.own_end = true;
  switches_[in].own_mac = mac;
}

void Wires::join(unsigned inner, unsigned outer, const std::optional<Plug>& uplink) {
  Port below, above;
  below.limited = above.limited = uplink.has_value();
  if (uplink) {
    below.room = above.room = std::min(uplink->mtu, switches_[outer].mtu);
    above.separated = uplink->separated;
    above.only = uplink->only;
  }
  below.far_switch = outer;
  below.far_port = static_cast<unsigned>(switches_[outer].ports.size());
  above.far_switch = inner;
  above.far_port = static_cast<unsigned>(switches_[inner].ports.size());
  switches_[inner].ports.push_back(below);
  switches_[outer].ports.push_back(above);
}

void Wires::forget() {
  for (Switch& s : switches_) s.learned.clear();
}

void Wires::send(unsigned card, const Frame& f, std::vector<unsigned>& arrivals) {
  if (!is_plugged(card)) return;
  const auto [at, port] = seats_[card];
  const Port& p = switches_[at].ports[port];
  if (p.limited && f.size() > p.room + kTag) return;
  enter(at, port, f, arrivals);
}

void Wires::enter(unsigned at, unsigned port, const Frame& f, std::vector<unsigned>& arrivals) {
  Switch& s = switches_[at];
  if (s.ports[port].only && f.from != *s.ports[port].only) return;
  const auto known = [&](std::uint64_t mac) {
    return std::find_if(s.learned.begin(), s.learned.end(), [&](const auto& l) { return l.first == mac; });
  };
  if (f.from != s.own_mac) { // its own never moves
    if (const auto it = known(f.from); it != s.learned.end())
      it->second = port;
    else
      s.learned.emplace_back(f.from, port);
  }
  const bool to_own = s.own_mac == f.to;
  const auto it = known(f.to);
  for (unsigned out = 0; out < s.ports.size(); ++out) {
    if (to_own ? !s.ports[out].own_end : it != s.learned.end() && it->second != out) continue;
    leave(at, port, out, f, arrivals);
  }
}

void Wires::leave(unsigned at, unsigned in, unsigned out, const Frame& f, std::vector<unsigned>& arrivals) {
  const Switch& s = switches_[at];
  const Port& p = s.ports[out];
  if (out == in || (p.separated && s.ports[in].separated)) return;
  if (p.limited && f.size() > p.room + kTag) return;
  if (p.card != kNone)
    arrivals.push_back(p.card);
  else
    enter(p.far_switch, p.far_port, f, arrivals);
}

} // namespace snug::test::sim
