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
  b_.routes.push_back(r);
  n_.nodes_[node].end_route = static_cast<std::uint32_t>(b_.routes.size());
}

// One for each address, except a second one of the same network on the same card.
void ReachBuilder::add_connected(std::uint32_t node) {
  static const Prefix link_locals = Prefix::of(Address::v6(0xfe80'0000'0000'0000ULL, 0), 64);
  const ReachNode& n = n_.nodes_[node];
  for (std::uint32_t p = n.first_port; p < n.end_port; ++p) {
    const auto addresses = n_.addresses(b_.ports[p]);
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
    if (n_.link_local(b_.ports[p])) accept(node, {link_locals, std::nullopt, p, kConnectedMetric6, {}});
  }
}

// The way to a next hop. For IPv4 routes that have a next hop themselves do not count (seen in the kernel).
const ReachRoute* ReachBuilder::match(std::uint32_t node, const Address& a, CardId card) const {
  const ReachRoute* best = nullptr;
  for (const ReachRoute& r : n_.routes(n_.nodes_[node])) {
    if (a.is_v4() && r.via) continue;
    if (!r.to.contains(a) || (card && b_.ports[r.port].id != AnyId(card))) continue;
    if (!best || r.to.length() > best->to.length() ||
        (r.to.length() == best->to.length() && r.metric < best->metric))
      best = &r;
  }
  return best;
}

bool ReachBuilder::is_broadcast_of(const ReachNode& n, const Address& x) const {
  for (std::uint32_t p = n.first_port; p < n.end_port; ++p)
    for (const ReachAddress& a : n_.addresses(b_.ports[p]))
      if (is_broadcast(a, x)) return true;
  return false;
}

// Whether a card has an address.
bool ReachBuilder::has(std::uint32_t port, const Address& x) const {
  const auto here = n_.with(x);
  return std::any_of(here.begin(), here.end(), [&](const ReachAddress& a) {
    return b_.ports[a.port].node == b_.ports[port].node && b_.ports[a.port].id == b_.ports[port].id;
  });
}

// A next hop must be a neighbour (RFC 1812 5.2.4.2 in the words of its time); nothing: the route is refused.
std::optional<std::uint32_t> ReachBuilder::port_towards(std::uint32_t node, const Route& r) const {
  const ReachNode& n = n_.nodes_[node];
  const std::uint32_t own = r.card ? n_.port_of(node, r.card) : kNowhere;
  if (r.card && own == kNowhere) return std::nullopt;
  if (!r.via) return own == kNowhere ? std::nullopt : std::optional(own);
  if (r.on_link && r.card) { // taken at its word, except for what is no neighbour anywhere
    const bool bad = own == kNowhere || n_.owns(n, *r.via) || is_broadcast_of(n, *r.via);
    return bad ? std::nullopt : std::optional(own);
  }
  if (!r.via->is_v4() && is_link_local(*r.via)) return own == kNowhere ? std::nullopt : std::optional(own);
  for (const ReachAddress& a : n_.with(*r.via)) {
    if (a.port < n.first_port || a.port >= n.end_port) continue;
    if (!r.via->is_v4()) return std::nullopt;
    if (own == kNowhere || b_.ports[a.port].id == AnyId(r.card)) return a.port;
  }
  if (is_broadcast_of(n, *r.via)) return std::nullopt;
  const ReachRoute* way = match(node, *r.via, r.card);
  if (!way || way->via) return std::nullopt;
  return way->port;
}

// As `route add` does: the same prefix and metric twice is refused.
void ReachBuilder::add_unless_taken(ReachRoute r) {
  const std::uint32_t node = b_.ports[r.port].node;
  for (const ReachRoute& o : n_.routes(n_.nodes_[node]))
    if (o.to == r.to && o.metric == r.metric) return;
  accept(node, r);
}

void ReachBuilder::add_route(std::uint32_t node, const Route& r) {
  if (r.via && r.via->family() != r.to.family()) return;
  const auto port = port_towards(node, r);
  if (!port || (!r.to.is_v4() && b_.ports[*port].mtu < kLeastMtu6)) return;
  const std::int32_t metric = r.to.is_v4() || r.metric != 0 ? r.metric : kStaticMetric6;
  if (r.via && r.via->is_v4() && has(*port, *r.via)) // by itself: Linux looks for everybody on that card
    return add_unless_taken({r.to, std::nullopt, *port, metric, n_.source4(*port, r.via)});
  // Without a next hop: the card's first address, whatever the target (seen in the kernel).
  const auto source = r.via || !r.to.is_v4() ? std::nullopt : n_.source4(*port, std::nullopt);
  add_unless_taken({r.to, r.via, *port, metric, source});
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
    if (b_.ports[port].node == node) {
      Route r;
      r.via = gateway;
      add_route(node, r);
    }
  for (const auto& [port, router] : advertisers_)
    if (b_.ports[port].node == node)
      add_unless_taken({all6, n_.link_local(b_.ports[router]), port, kStaticMetric6, std::nullopt});
  const ReachNode& n = n_.nodes_[node];
  for (std::uint32_t p = n.first_port; p < n.end_port; ++p) {
    if (b_.ports[p].piece != beyond()) continue;
    add_unless_taken({all4, std::nullopt, p, 0, std::nullopt});
    add_unless_taken({all6, std::nullopt, p, kStaticMetric6, std::nullopt});
  }
}

// Stable. Most have a handful, for which std's would take memory first.
void ReachBuilder::sort_routes(std::uint32_t node) {
  const ReachNode& n = n_.nodes_[node];
  const auto first = b_.routes.begin() + n.first_route, end = b_.routes.begin() + n.end_route;
  const auto is_before = [](const ReachRoute& a, const ReachRoute& b) {
    if (a.to.length() != b.to.length()) return a.to.length() > b.to.length();
    return a.metric < b.metric;
  };
  constexpr std::ptrdiff_t kHandful = 16;
  if (end - first > kHandful) return std::stable_sort(first, end, is_before);
  for (auto at = first; at != end; ++at) std::rotate(std::upper_bound(first, at, *at, is_before), at, at + 1);
}

void ReachBuilder::add_routes(std::uint32_t node) {
  n_.nodes_[node].first_route = n_.nodes_[node].end_route = static_cast<std::uint32_t>(b_.routes.size());
  add_connected(node);
  add_static(node, true);
  add_static(node, false);
  add_given(node);
  sort_routes(node);
}

void ReachBuilder::reserve() {
  const std::size_t ports = lab_.cards.size() + 2 * lab_.segments.size() + 2 * lab_.lans.size();
  const std::size_t addresses = index_.facts().addresses.size() + ports;
  n_.nodes_.reserve(lab_.machines.size() + lab_.segments.size() + lab_.lans.size() + 2);
  b_.ports.reserve(ports);
  b_.addresses.reserve(addresses);
  b_.by_address.reserve(addresses + ports);
  b_.routes.reserve(addresses + 2 * ports);
}

void ReachBuilder::build() {
  reserve();
  add_pieces();
  for (std::uint32_t m = 0; m < lab_.machines.size(); ++m) add_machine(m);
  add_pc();
  add_translators();
  add_lan_routers();
  add_outside();
  b_.ids.reserve(n_.nodes_.size());
  find_shared_macs();
  lease_all();
  advertise_all();
  sort_addresses();
  for (std::uint32_t i = 0; i < n_.nodes_.size(); ++i) {
    add_routes(i);
    b_.ids.emplace_back(n_.nodes_[i].id, i);
  }
  std::sort(b_.ids.begin(), b_.ids.end());
  add_forwards();
}

ReachNetwork::ReachNetwork(const Index& index, const AddressesInUse& addresses,
                           std::span<const std::uint8_t> running, LeaseChoices& choices) {
  const auto body = std::make_shared<Body>();
  body_ = body;
  ReachBuilder(*this, *body, index, addresses, running, choices).build();
}

ReachNetwork::ReachNetwork(const ReachNetwork& like, std::span<const std::uint8_t> running)
    : nodes_(like.nodes_), body_(like.body_) {
  for (std::size_t m = 0; m < running.size(); ++m) nodes_[m].on = running[m] != 0;
}

bool gives_same(const Index& index, std::span<const std::uint8_t> running,
                std::span<const std::uint8_t> others) {
  constexpr std::uint32_t kGiver =
      CardMark::server | CardMark::relay | CardMark::advertises | CardMark::asks_dhcp | CardMark::slaac;
  const NetworkFacts& facts = index.facts();
  bool cut = false; // which guests run decides whether a switch without uplink is up
  facts.each_card(CardMark::carries, [&](std::uint32_t c) { cut |= !index.lab().cards[c].connected; });
  if (cut && !std::equal(running.begin(), running.end(), others.begin(), others.end())) return false;
  if ((facts.any_card & kGiver) == 0) return true;
  for (std::uint32_t c = 0; c < facts.card_marks.size(); ++c) {
    const std::uint32_t m = facts.card_machine[c];
    if ((facts.card_marks[c] & kGiver) != 0 && m != kNowhere && running[m] != others[m]) return false;
  }
  return true;
}

} // namespace snug
