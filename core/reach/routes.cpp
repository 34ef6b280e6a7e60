#include "core/reach/route_maker.h"

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

// One for each address, except a second one of the same network on the same card.
void RouteMaker::add_connected() {
  static const Prefix link_locals = Prefix::of(Address::v6(0xfe80'0000'0000'0000ULL, 0), 64);
  for (std::uint32_t p = node_.first_port; p < node_.end_port; ++p) {
    const auto addresses = n_.addresses(n_.ports()[p]);
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
      made_.push_back(
          {to, std::nullopt, p, v4 ? 0 : kConnectedMetric6, v4 ? std::optional(a.address) : std::nullopt});
    }
    if (n_.link_local(n_.ports()[p])) made_.push_back({link_locals, std::nullopt, p, kConnectedMetric6, {}});
  }
}

// The way to a next hop. For IPv4 routes that have a next hop themselves do not count (seen in the kernel).
const ReachRoute* RouteMaker::match(const Address& a, CardId card) const {
  const ReachRoute* best = nullptr;
  for (const ReachRoute& r : made_) {
    if (a.is_v4() && r.via) continue;
    if (!r.to.contains(a) || (card && n_.ports()[r.port].id != AnyId(card))) continue;
    if (!best || r.to.length() > best->to.length() ||
        (r.to.length() == best->to.length() && r.metric < best->metric))
      best = &r;
  }
  return best;
}

bool RouteMaker::is_broadcast_of(const Address& x) const {
  for (std::uint32_t p = node_.first_port; p < node_.end_port; ++p)
    for (const ReachAddress& a : n_.addresses(n_.ports()[p]))
      if (is_broadcast(a, x)) return true;
  return false;
}

// Whether a card has an address.
bool RouteMaker::has(std::uint32_t port, const Address& x) const {
  const auto here = n_.with(x);
  return std::any_of(here.begin(), here.end(), [&](const ReachAddress& a) {
    return n_.ports()[a.port].node == n_.ports()[port].node && n_.ports()[a.port].id == n_.ports()[port].id;
  });
}

// A next hop must be a neighbour (RFC 1812 5.2.4.2 in the words of its time); nothing: the route is refused.
std::optional<std::uint32_t> RouteMaker::port_towards(const Route& r) const {
  const std::uint32_t own = r.card ? n_.port_of(place_, r.card) : kNowhere;
  if (r.card && own == kNowhere) return std::nullopt;
  if (!r.via) return own == kNowhere ? std::nullopt : std::optional(own);
  if (r.on_link && r.card) { // taken at its word, except for what is no neighbour anywhere
    const bool bad = own == kNowhere || n_.owns(node_, *r.via) || is_broadcast_of(*r.via);
    return bad ? std::nullopt : std::optional(own);
  }
  if (!r.via->is_v4() && is_link_local(*r.via)) return own == kNowhere ? std::nullopt : std::optional(own);
  for (const ReachAddress& a : n_.with(*r.via)) {
    if (a.port < node_.first_port || a.port >= node_.end_port) continue;
    if (!r.via->is_v4()) return std::nullopt;
    if (own == kNowhere || n_.ports()[a.port].id == AnyId(r.card)) return a.port;
  }
  if (is_broadcast_of(*r.via)) return std::nullopt;
  const ReachRoute* way = match(*r.via, r.card);
  if (!way || way->via) return std::nullopt;
  return way->port;
}

// As `route add` does: the same prefix and metric twice is refused.
void RouteMaker::add_unless_taken(const ReachRoute& r) {
  for (const ReachRoute& o : made_)
    if (o.to == r.to && o.metric == r.metric) return;
  made_.push_back(r);
}

void RouteMaker::add_route(const Route& r) {
  if (r.via && r.via->family() != r.to.family()) return;
  const auto port = port_towards(r);
  if (!port || (!r.to.is_v4() && n_.ports()[*port].mtu < kLeastMtu6)) return;
  const std::int32_t metric = r.to.is_v4() || r.metric != 0 ? r.metric : kStaticMetric6;
  if (r.via && r.via->is_v4() && has(*port, *r.via)) // by itself: Linux looks for everybody on that card
    return add_unless_taken({r.to, std::nullopt, *port, metric, n_.source4(*port, r.via)});
  // Without a next hop: the card's first address, whatever the target (seen in the kernel).
  const auto source = r.via || !r.to.is_v4() ? std::nullopt : n_.source4(*port, std::nullopt);
  add_unless_taken({r.to, r.via, *port, metric, source});
}

void RouteMaker::add_static(bool on_link) {
  if (node_.id.kind != Kind::machine) return;
  for (Route r : index_.lab().machines[place_].routes) {
    // A next hop of IPv6 behind the default prefix, which is written as IPv4's.
    if (r.via && !r.via->is_v4() && r.to == Prefix()) r.to = Prefix::of(Address::v6(0, 0), 0);
    if (on_link == !r.via.has_value()) add_route(r);
  }
}

// What DHCP and router advertisements bring, and what stands behind translators, routers and the outside.
void RouteMaker::add_given() {
  const Prefix all4, all6 = Prefix::of(Address::v6(0, 0), 0);
  const auto before = [](const auto& row, std::uint32_t port) { return row.first < port; };
  const auto each = [&](const auto& rows, const auto use) {
    auto at = std::lower_bound(rows.begin(), rows.end(), node_.first_port, before);
    for (; at != rows.end() && at->first < node_.end_port; ++at) use(*at);
  };
  each(given_.gateways, [&](const auto& row) {
    Route r;
    r.via = row.second;
    add_route(r);
  });
  each(given_.advertisers, [&](const auto& row) {
    add_unless_taken({all6, n_.link_local(n_.ports()[row.second]), row.first, kStaticMetric6, std::nullopt});
  });
  for (std::uint32_t p = node_.first_port; p < node_.end_port; ++p) {
    if (n_.ports()[p].piece != kBeyond) continue;
    add_unless_taken({all4, std::nullopt, p, 0, std::nullopt});
    add_unless_taken({all6, std::nullopt, p, kStaticMetric6, std::nullopt});
  }
}

// Stable. Most have a handful, for which std's would take memory first.
void RouteMaker::sort() {
  const auto is_before = [](const ReachRoute& a, const ReachRoute& b) {
    if (a.to.length() != b.to.length()) return a.to.length() > b.to.length();
    return a.metric < b.metric;
  };
  constexpr std::size_t kHandful = 16;
  if (made_.size() > kHandful) return std::stable_sort(made_.begin(), made_.end(), is_before);
  for (auto at = made_.begin(); at != made_.end(); ++at)
    std::rotate(std::upper_bound(made_.begin(), at, *at, is_before), at, at + 1);
}

std::span<const ReachRoute> RouteMaker::make() {
  made_.clear();
  add_connected();
  add_static(true);
  add_static(false);
  add_given();
  sort();
  return made_;
}

} // namespace snug
