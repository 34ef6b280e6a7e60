#include "core/reach/network.h"

#include "core/reach/route_maker.h"

#include <algorithm>
#include <bit>

namespace snug {

AddressTable& ReachNetwork::table(const Address& a) const {
  if (a.is_v4()) return body_->held4;
  return is_link_local(a) ? body_->held_local : body_->held6;
}

// An address that was the broadcast address of an earlier one of the same system stays that (seen in the
// kernel): nobody gets an answer from it. IPv4.
bool ReachNetwork::is_shadowed(std::uint32_t place) const {
  const ReachAddress& a = body_->addresses[place];
  if ((a.address.as_u32() & 3U) != 3) return false; // no network has so few hosts
  const ReachNode& n = nodes_[body_->ports[a.port].node];
  for (std::uint32_t i = body_->ports[n.first_port].first_address; i < place; ++i) {
    const ReachAddress& b = body_->addresses[i];
    if (!b.address.is_v4()) continue;
    if (b.address == a.address) return false;
    if (b.length < 31 && (b.address.as_u32() | ~std::uint32_t{0} >> b.length) == a.address.as_u32())
      return true;
  }
  return false;
}

// Link-local ones of IPv6 that systems give themselves come after those that somebody typed.
void ReachNetwork::fill_table(const Address& like) const {
  const bool v4 = like.is_v4(), local = !v4 && is_link_local(like);
  std::vector<ReachAddress> all;
  all.reserve(body_->addresses.size());
  for (std::uint32_t i = 0; i < body_->addresses.size(); ++i) {
    const ReachAddress& a = body_->addresses[i];
    if (a.address.is_v4() != v4 || (!v4 && is_link_local(a.address) != local)) continue;
    if (!v4 || !is_shadowed(i)) all.push_back(a);
  }
  for (std::uint32_t p = 0; local && p < body_->ports.size(); ++p)
    if (const auto a = link_local(body_->ports[p])) all.push_back({*a, 64, p});
  table(like).fill(all);
}

std::span<const ReachAddress> ReachNetwork::with(const Address& a) const {
  const AddressTable& held = table(a);
  if (!held.is_filled()) fill_table(a);
  return held.with(a);
}

std::span<const ReachRoute> ReachNetwork::routes(const ReachNode& n) const {
  const auto place = static_cast<std::uint32_t>(&n - nodes_.data());
  RouteStore& store = body_->routes;
  if (!store.has(place)) store.keep(place, RouteMaker(*this, *body_->index, body_->given, place).make());
  return store.of(place);
}

std::uint32_t ReachNetwork::node_of(AnyId id) const {
  if (id.kind == Kind::machine) return body_->index->place(id);
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

// Most have a handful: only where one of them is it, others decide (see is_shadowed).
bool ReachNetwork::owns(const ReachNode& n, const Address& a) const {
  constexpr std::uint32_t kHandful = 16;
  if (n.first_port == n.end_port) return false;
  const std::uint32_t first = body_->ports[n.first_port].first_address;
  const std::uint32_t end = body_->ports[n.end_port - 1].end_address;
  const bool is_local = !a.is_v4() && is_link_local(a);
  if (!is_local && end - first <= kHandful) {
    std::uint32_t i = first;
    while (i < end && body_->addresses[i].address != a) ++i;
    if (i == end || !a.is_v4()) return i < end;
  }
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
