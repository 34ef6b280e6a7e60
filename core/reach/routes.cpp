#include "core/reach/builder.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::int32_t kConnectedMetric6 = 256;
constexpr std::int32_t kStaticMetric6 = 1024;

// IPv4 address of all in a network (RFC 1122 3.2.1.3); none for /31 and /32 (RFC 3021).
bool is_broadcast(const ReachAddress& a, const Address& x) {
  return a.address.is_v4() && a.length < 31 && Prefix::of(a.address, a.length).last() == x;
}

} // namespace

void ReachBuilder::accept(std::uint32_t node, ReachRoute r) {
  n_.routes_.push_back(r);
  n_.nodes_[node].end_route = static_cast<std::uint32_t>(n_.routes_.size());
}

// One for each address, except a second one of the same network on the same card.
void ReachBuilder::add_connected(std::uint32_t node) {
  const ReachNode& n = n_.nodes_[node];
  for (std::uint32_t p = n.first_port; p < n.end_port; ++p) {
    const auto addresses = n_.addresses(n_.ports_[p]);
    for (std::size_t i = 0; i < addresses.size(); ++i) {
      const ReachAddress& a = addresses[i];
      const bool v4 = a.address.is_v4();
      const Prefix to = Prefix::of(a.address, a.length);
      const auto same = [&](const ReachAddress& b) {
        return b.length == a.length && b.address.family() == a.address.family() &&
               Prefix::of(b.address, b.length) == to;
      };
      if (a.length == a.address.bits() ||
          std::any_of(addresses.begin(), addresses.begin() + static_cast<std::ptrdiff_t>(i), same))
        continue;
      accept(node,
             {to, std::nullopt, p, v4 ? 0 : kConnectedMetric6, v4 ? std::optional(a.address) : std::nullopt});
    }
    if (n_.link_local(n_.ports_[p]))
      accept(
          node,
          {Prefix::of(Address::v6(0xfe80'0000'0000'0000ULL, 0), 64), std::nullopt, p, kConnectedMetric6, {}});
  }
}

const ReachRoute* ReachBuilder::match(std::uint32_t node, const Address& a, CardId card) const {
  const ReachRoute* best = nullptr;
  for (const ReachRoute& r : n_.routes(n_.nodes_[node])) {
    if (!r.to.contains(a) || (card && n_.ports_[r.port].id != AnyId(card))) continue;
    if (!best || r.to.length() > best->to.length() ||
        (r.to.length() == best->to.length() && r.metric < best->metric))
      best = &r;
  }
  return best;
}

// A next hop must be a neighbour (RFC 1812 5.2.4.2 in the words of its time); nothing: the route is refused.
std::optional<std::uint32_t> ReachBuilder::port_towards(std::uint32_t node, const Route& r) const {
  const ReachNode& n = n_.nodes_[node];
  const std::uint32_t own = r.card ? n_.port_of(node, r.card) : kNowhere;
  if (r.card && own == kNowhere) return std::nullopt;
  if (!r.via || (r.on_link && r.card)) return own == kNowhere ? std::nullopt : std::optional(own);
  if (!r.via->is_v4() && is_link_local(*r.via)) return own == kNowhere ? std::nullopt : std::optional(own);
  for (const ReachAddress& a : n_.with(*r.via))
    if (a.port >= n.first_port && a.port < n.end_port &&
        (own == kNowhere || n_.ports_[a.port].id == AnyId(r.card)))
      return r.via->is_v4() ? std::optional(a.port) : std::nullopt;
  for (std::uint32_t p = n.first_port; p < n.end_port; ++p)
    for (const ReachAddress& a : n_.addresses(n_.ports_[p]))
      if (is_broadcast(a, *r.via)) return std::nullopt;
  const ReachRoute* way = match(node, *r.via, r.card);
  if (!way || way->via) return std::nullopt;
  return way->port;
}

// As `route add` does: the same prefix and metric twice is refused.
void ReachBuilder::add_unless_taken(ReachRoute r) {
  const std::uint32_t node = n_.ports_[r.port].node;
  for (const ReachRoute& o : n_.routes(n_.nodes_[node]))
    if (o.to == r.to && o.metric == r.metric) return;
  accept(node, r);
}

void ReachBuilder::add_route(std::uint32_t node, const Route& r) {
  if (r.via && r.via->family() != r.to.family()) return;
  const auto port = port_towards(node, r);
  if (!port || (!r.to.is_v4() && n_.ports_[*port].mtu < kLeastMtu6)) return;
  const std::int32_t metric = r.to.is_v4() || r.metric != 0 ? r.metric : kStaticMetric6;
  add_unless_taken({r.to, r.via, *port, metric, std::nullopt});
}

void ReachBuilder::add_static(std::uint32_t node, bool on_link) {
  const std::uint32_t place = index_.place(n_.nodes_[node].id);
  if (n_.nodes_[node].id.kind != Kind::machine || place == kNowhere) return;
  for (Route r : lab_.machines[place].routes) {
    // A next hop of IPv6 behind the default prefix, which is written as IPv4's.
    if (r.via && !r.via->is_v4() && r.to == Prefix()) r.to = Prefix::of(Address::v6(0, 0), 0);
    if (on_link == !r.via.has_value()) add_route(node, r);
  }
}

// What DHCP and router advertisements bring, and what stands behind translators, routers and the outside.
void ReachBuilder::add_given(std::uint32_t node) {
  const Prefix all4, all6 = Prefix::of(Address::v6(0, 0), 0);
  for (const auto& [port, gateway] : lease_gateways_)
    if (n_.ports_[port].node == node) {
      Route r;
      r.via = gateway;
      add_route(node, r);
    }
  for (const auto& [port, router] : advertisers_)
    if (n_.ports_[port].node == node)
      add_unless_taken({all6, n_.link_local(n_.ports_[router]), port, kStaticMetric6, std::nullopt});
  const ReachNode& n = n_.nodes_[node];
  for (std::uint32_t p = n.first_port; p < n.end_port; ++p) {
    if (n_.ports_[p].piece != beyond()) continue;
    add_unless_taken({all4, std::nullopt, p, 0, std::nullopt});
    add_unless_taken({all6, std::nullopt, p, kStaticMetric6, std::nullopt});
  }
}

void ReachBuilder::sort_routes(std::uint32_t node) {
  const ReachNode& n = n_.nodes_[node];
  std::stable_sort(n_.routes_.begin() + n.first_route, n_.routes_.begin() + n.end_route,
                   [](const ReachRoute& a, const ReachRoute& b) {
                     if (a.to.length() != b.to.length()) return a.to.length() > b.to.length();
                     return a.metric < b.metric;
                   });
}

void ReachBuilder::add_routes(std::uint32_t node) {
  n_.nodes_[node].first_route = n_.nodes_[node].end_route = static_cast<std::uint32_t>(n_.routes_.size());
  add_connected(node);
  add_static(node, true);
  add_static(node, false);
  add_given(node);
  sort_routes(node);
}

void ReachBuilder::build() {
  add_pieces();
  for (std::uint32_t m = 0; m < lab_.machines.size(); ++m) add_machine(m);
  add_pc();
  add_translators();
  add_lan_routers();
  add_outside();
  find_shared_macs();
  lease_all();
  advertise_all();
  sort_addresses();
  for (std::uint32_t i = 0; i < n_.nodes_.size(); ++i) {
    add_routes(i);
    n_.ids_.emplace_back(n_.nodes_[i].id, i);
  }
  std::sort(n_.ids_.begin(), n_.ids_.end());
}

ReachNetwork::ReachNetwork(const Index& index, const AddressesInUse& addresses,
                           std::span<const std::uint8_t> running, std::size_t variant) {
  ReachBuilder(*this, index, addresses, running, variant).build();
}

} // namespace snug
