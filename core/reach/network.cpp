#include "core/reach/network.h"

#include <algorithm>
#include <bit>

namespace snug {

std::span<const ReachAddress> ReachNetwork::with(const Address& a) const {
  const auto first = std::lower_bound(body_->by_address.begin(), body_->by_address.end(), a,
                                      [](const ReachAddress& r, const Address& x) { return r.address < x; });
  auto end = first;
  while (end != body_->by_address.end() && end->address == a) ++end;
  return {first, end};
}

std::uint32_t ReachNetwork::node_of(AnyId id) const {
  const auto it = std::lower_bound(body_->ids.begin(), body_->ids.end(), std::pair(id, std::uint32_t{0}));
  return it != body_->ids.end() && it->first == id ? it->second : kNowhere;
}

std::uint32_t ReachNetwork::port_of(std::uint32_t node, CardId card) const {
  for (std::uint32_t p = nodes_[node].first_port; p < nodes_[node].end_port; ++p)
    if (body_->ports[p].id == AnyId(card)) return p;
  return kNowhere;
}

bool ReachNetwork::same_network(std::uint32_t a, std::uint32_t b) const {
  const std::uint32_t at = body_->ports[a].piece, bt = body_->ports[b].piece;
  return at != kNowhere && bt != kNowhere && body_->pieces[at].root == body_->pieces[bt].root;
}

bool ReachNetwork::owns(const ReachNode& n, const Address& a) const {
  const auto holders = with(a);
  return std::any_of(holders.begin(), holders.end(),
                     [&](const ReachAddress& r) { return r.port >= n.first_port && r.port < n.end_port; });
}

namespace {

// A switch and a cable take four octets more than their MTU, the room of a VLAN tag (IEEE 802.3ac, from
// memory; seen in the kernel's cases).
constexpr std::int32_t kTagRoom = 4;

// One way into a switch or out of it.
struct Gate {
  bool separated = false;
  bool too_small = false;
};

} // namespace

// Climbs from both ends to the switch where they meet. `in` and `out` are the gates at the switch reached.
FrameStop ReachNetwork::frame(std::uint32_t from, std::uint32_t to, std::int32_t size) const {
  const ReachPort& a = body_->ports[from];
  const ReachPort& b = body_->ports[to];
  if (!same_network(from, to)) return FrameStop::apart;
  if (a.mac == b.mac) return FrameStop::same_mac;
  const auto plug = [&](const ReachPort& p) {
    if (p.inside) return Gate{};
    return Gate{p.separated, size > std::min(p.mtu, body_->pieces[p.piece].port_mtu) + kTagRoom};
  };
  Gate in = plug(a), out = plug(b);
  std::uint32_t x = a.piece, y = b.piece;
  while (x != y) {
    const bool from_below = body_->pieces[x].depth >= body_->pieces[y].depth; // else the way down to `to`
    std::uint32_t& piece = from_below ? x : y;
    Gate& gate = from_below ? in : out;
    if (gate.too_small) return FrameStop::too_big;
    const ReachPiece& p = body_->pieces[piece];
    if (p.parent == kNowhere) return FrameStop::apart;
    if (from_below && p.up_own_mac_only && a.mac != p.up_mac) return FrameStop::other_mac;
    gate = p.up ? Gate{p.up_separated, size > std::min(p.up_mtu, body_->pieces[p.parent].port_mtu) + kTagRoom}
                : Gate{};
    piece = p.parent;
  }
  if (in.separated && out.separated) return FrameStop::separated;
  return in.too_small || out.too_small ? FrameStop::too_big : FrameStop::none;
}

std::optional<Address> ReachNetwork::source4(std::uint32_t port,
                                             const std::optional<Address>& towards) const {
  const ReachPort& p = body_->ports[port];
  const ReachAddress* first = nullptr;
  for (const ReachAddress& a : addresses(p)) {
    if (!a.address.is_v4()) continue;
    if (towards && Prefix::of(a.address, a.length).contains(*towards)) return a.address;
    if (!first) first = &a;
  }
  if (first) return first->address;
  const ReachNode& n = nodes_[p.node];
  for (std::uint32_t q = n.first_port; q < n.end_port; ++q)
    for (const ReachAddress& a : addresses(body_->ports[q]))
      if (a.address.is_v4()) return a.address;
  return std::nullopt;
}

std::optional<Address> ReachNetwork::link_local(const ReachPort& p) const {
  if (p.mtu < kLeastMtu6) return std::nullopt;
  return Address::v6(0xfe80'0000'0000'0000ULL, modified_eui64(Mac(p.mac)));
}

int common_bits(const Address& a, const Address& b) {
  const std::uint64_t high = a.high() ^ b.high(), low = a.low() ^ b.low();
  return high != 0 ? std::countl_zero(high) : 64 + std::countl_zero(low);
}

// RFC 6724 5, as far as scopes and prefixes decide: same scope, outgoing card, longest match.
std::optional<Address> ReachNetwork::source6(std::uint32_t port, const Address& target) const {
  const ReachPort& p = body_->ports[port];
  const auto local = link_local(p);
  if (is_link_local(target)) return local;
  std::optional<Address> best;
  const auto consider = [&](const ReachPort& q) {
    for (const ReachAddress& a : addresses(q)) {
      if (a.address.is_v4() || is_link_local(a.address)) continue;
      if (!best || common_bits(a.address, target) > common_bits(*best, target)) best = a.address;
    }
  };
  consider(p);
  const ReachNode& n = nodes_[p.node];
  for (std::uint32_t q = n.first_port; q < n.end_port && !best; ++q) consider(body_->ports[q]);
  return best ? best : local;
}

} // namespace snug
