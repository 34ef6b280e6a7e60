#include "core/addressing/domains.h"
#include "tests/support/network_lab_maker.h"

#include <algorithm>
#include <map>

namespace snug::test {

// A physical LAN, the PC's sockets, and addresses that are given out.

std::size_t NetworkMaker::net(std::size_t segment) const {
  return lab_.segments[segment].type == SegmentKind::bridged ? kLanNet : segment;
}

// One router has one number everywhere, except where segments share a net.
int NetworkMaker::router_host(std::size_t router, std::size_t segment) const {
  const int nth = static_cast<int>(router) + 1;
  return net(segment) == kLanNet ? 120 + 6 * static_cast<int>(segment) + nth : nth;
}

// Some of the segments are one network with it.
void NetworkMaker::add_lan() {
  if (!r_.chance(25)) return;
  Lan lan;
  lan.medium = r_.chance(85) ? Medium::wired : Medium::wireless;
  lan.prefix4 = Prefix::of(v4(kLanNet, 0), 24);
  lan.gateway4 = v4(kLanNet, 1);
  lan.has_dhcp = r_.chance(75) ? Known::yes : Known::no;
  RangeRow& pool = lan.pool.emplace_back();
  pool.first = v4(kLanNet, 230);
  pool.last = v4(kLanNet, 230 + static_cast<int>(r_.below(8)));
  const LanId id = add(std::move(lan)).id;
  for (Segment& s : lab_.segments) {
    if (s.type == SegmentKind::nat && r_.chance(50)) s.lan = id;
    if (s.type != SegmentKind::isolated || !r_.chance(45)) continue;
    s.type = SegmentKind::bridged;
    s.lan = id;
    if (r_.chance(10)) s.vlan = 7;
  }
}

// Segments that the LAN makes one network: a machine keeps one card there. By which of two the kernel answers
// is not settled yet (DEVELOPERS.md, D59).
void NetworkMaker::unplug_twins() {
  if (lab_.lans.empty()) return;
  const Index index(lab_);
  const Domains domains(index);
  for (std::uint32_t m = 0; m < lab_.machines.size(); ++m) {
    std::map<std::uint32_t, SegmentId> kept;
    for (const std::uint32_t c : index.cards_of(m)) {
      if (domains.of_card(c) == kNowhere) continue;
      const auto [at, fresh] = kept.emplace(domains.of_card(c), lab_.cards[c].segment);
      if (fresh || at->second == lab_.cards[c].segment) continue;
      lab_.cards[c].connected = false;
      lab_.cards[c].addresses.clear();
    }
  }
}

// Some routers give addresses; translators and the LAN's router do it anyway.
void NetworkMaker::add_servers() {
  for (std::size_t s = 0; s < lab_.segments.size(); ++s)
    if (lab_.segments[s].type == SegmentKind::nat) served_.insert(s);
  if (!lab_.lans.empty() && lab_.lans.front().has_dhcp == Known::yes)
    for (std::size_t s = 0; s < lab_.segments.size(); ++s)
      if (net(s) == kLanNet) served_.insert(s);
  if (!r_.chance(30)) return;
  for (Card& c : lab_.cards) {
    const std::size_t s = segment_of(c);
    if (!r_.chance(served_.count(s) != 0 ? 8 : 40) || c.addresses.empty()) continue;
    served_.insert(s);
    c.dhcp = DhcpDuty::server;
    RangeRow& range = c.ranges.emplace_back();
    const int first = 210 + 10 * static_cast<int>(r_.below(2));
    range.first = v4(net(s), first);
    range.last = v4(net(s), first + static_cast<int>(r_.below(6)));
    if (r_.chance(70)) lab_.segments[s].gateway4 = c.addresses.front().address;
  }
}

bool NetworkMaker::ask(Card& c, std::size_t segment) {
  if (served_.count(segment) == 0 || !r_.chance(45)) return false;
  c.addresses.emplace_back().kind = AddressKind::dhcp;
  return true;
}

void NetworkMaker::add_sockets() {
  lab_.pc.forwards = r_.chance(20);
  for (std::size_t i = 0; i < lab_.segments.size(); ++i) {
    Segment& s = lab_.segments[i];
    if (!r_.chance(12)) continue;
    s.pc_socket = true;
    if (s.type != SegmentKind::bridged || r_.chance(50))
      s.pc_address4 = v4(net(i), kSocket - static_cast<int>(i));
    if (!s.prefix4) s.prefix4 = Prefix::of(v4(net(i), 0), 24);
  }
}

} // namespace snug::test
