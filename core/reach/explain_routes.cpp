#include "core/model/store.h"
#include "core/reach/explainer.h"
#include "core/text/reach_text.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::int32_t kSmall = 60; // octets: fits everywhere

}

std::span<const ReachPort> Explainer::ports_of(std::uint32_t node) const {
  const ReachNode& n = n_.nodes()[node];
  return n_.ports().subspan(n.first_port, n.end_port - n.first_port);
}

bool Explainer::has_address(std::uint32_t port, Family f) const {
  const auto own = n_.addresses(n_.ports()[port]);
  return std::any_of(own.begin(), own.end(), [f](const ReachAddress& a) { return a.address.family() == f; });
}

std::optional<Prefix> Explainer::prefix(std::uint32_t port, Family f) const {
  const std::uint32_t place = n_.ports()[port].segment;
  if (place == kNowhere) return std::nullopt;
  const Segment& s = index_.lab().segments[place];
  const Lan* lan = s.type == SegmentKind::bridged ? index_.lan(s.lan) : nullptr;
  const auto& own = f == Family::v4 ? s.prefix4 : s.prefix6;
  return own || !lan ? own : f == Family::v4 ? lan->prefix4 : lan->prefix6;
}

// An address that is none of its segment's: nobody there looks for it on the segment.
std::optional<Message> Explainer::misplaced(std::uint32_t port, const Address& a) const {
  const auto p = prefix(port, a.family());
  const AnyId node = n_.nodes()[n_.ports()[port].node].id;
  if (!p || p->contains(a) || is_link_local(a) || node.kind != Kind::machine) return std::nullopt;
  return say(text::reach_misplaced, name(node), to_text(a), segment(port), to_text(*p));
}

// Of who is looked for, or of who looks for somebody beside it.
std::optional<Message> Explainer::misplaced() const {
  const ReachAddress* h = holder();
  if (!h) return std::nullopt;
  if (auto m = misplaced(h->port, h->address)) return m;
  const std::uint32_t at = n_.node_of(end_.node);
  if (at == kNowhere) return std::nullopt;
  for (std::uint32_t p = n_.nodes()[at].first_port; p < n_.nodes()[at].end_port; ++p)
    if (n_.same_network(p, h->port))
      for (const ReachAddress& a : n_.addresses(n_.ports()[p]))
        if (a.address.family() == h->address.family())
          if (auto m = misplaced(p, a.address)) return m;
  return std::nullopt;
}

std::optional<Message> Explainer::behind_translator() const {
  const ReachAddress* h = holder();
  const std::uint32_t s = h ? n_.ports()[h->port].segment : kNowhere;
  if (s == kNowhere || n_.node_of(index_.lab().segments[s].id) == kNowhere) return std::nullopt;
  const std::uint32_t from = n_.node_of(end_.back ? q_.to : q_.from);
  const auto all = from == kNowhere ? std::span<const ReachPort>() : ports_of(from);
  const bool hidden =
      std::any_of(all.begin(), all.end(), [](const ReachPort& p) { return p.piece != kNowhere; }) &&
      std::all_of(all.begin(), all.end(), [&](const ReachPort& p) {
        return p.segment != kNowhere && n_.node_of(index_.lab().segments[p.segment].id) != kNowhere;
      });
  if (hidden) return say(text::reach_both_behind, name(n_.nodes()[from].id), name_at(h->port));
  return say(text::reach_behind, name_at(h->port), segment(h->port));
}

Message Explainer::no_source() const {
  const std::uint32_t node = n_.node_of(end_.node);
  if (node == kNowhere) return say(text::reach_unknown, here());
  for (std::uint32_t p = n_.nodes()[node].first_port; p < n_.nodes()[node].end_port; ++p)
    if (n_.ports()[p].wants_lease && n_.addresses(n_.ports()[p]).empty()) return lease_missing(p);
  return say(text::reach_no_address, here());
}

// Answers DHCP, on or off.
bool Explainer::gives(std::uint32_t server) const {
  const ReachPort& p = n_.ports()[server];
  const AnyId node = n_.nodes()[p.node].id;
  if (const Card* card = p.id.kind == Kind::card ? index_.card(CardId{p.id.number}) : nullptr) {
    const auto own = n_.addresses(p);
    const auto is_here = [&](const RangeRow& r) {
      return std::any_of(own.begin(), own.end(), [&](const ReachAddress& a) {
        return a.address.is_v4() && Prefix::of(a.address, a.length).contains(r.first);
      });
    };
    return card->dhcp == DhcpDuty::server && std::any_of(card->ranges.begin(), card->ranges.end(), is_here);
  }
  if (node.kind == Kind::segment)
    return p.segment != kNowhere && index_.lab().segments[p.segment].translator_dhcp;
  const Lan* lan = node.kind == Kind::lan ? index_.lan(LanId{node.number}) : nullptr;
  return lan && lan->has_dhcp != Known::no && lan->prefix4;
}

// The LAN that a port is on; null: none.
const Lan* Explainer::lan_of(std::uint32_t port) const {
  const ReachPort& p = n_.ports()[port];
  const Segment* s = p.segment != kNowhere        ? &index_.lab().segments[p.segment]
                     : p.id.kind == Kind::segment ? find<Segment>(index_.lab(), SegmentId{p.id.number})
                                                  : nullptr;
  const bool is_there = s && (s->type == SegmentKind::bridged || p.segment == kNowhere);
  return is_there ? index_.lan(s->lan) : nullptr;
}

// Why a card that asks by DHCP has no address.
Message Explainer::lease_missing(std::uint32_t port) const {
  const std::string who = name_at(port);
  std::optional<Message> stopped, off;
  for (std::uint32_t q = 0; q < n_.ports().size(); ++q) {
    if (n_.ports()[q].node == n_.ports()[port].node || !n_.same_network(port, q) || !gives(q)) continue;
    const FrameStop there = n_.frame(port, q, kSmall), back = n_.frame(q, port, kSmall);
    if (!n_.nodes()[n_.ports()[q].node].on)
      off = say(text::reach_server_off, who, name_at(q), segment(port));
    else if (there == FrameStop::none && back == FrameStop::none)
      return say(text::reach_range_used, who, name_at(q), segment(port));
    else if (there == FrameStop::other_mac || back == FrameStop::other_mac)
      stopped = own_macs(port, q);
    else if (there == FrameStop::separated)
      stopped = say(text::reach_separated, who, name_at(q));
  }
  if (stopped) return *stopped;
  if (off) return *off;
  const Lan* lan = lan_of(port);
  if (lan && !lan->prefix4) return say(text::reach_lan_unknown, who, name_of(index_.lab(), lan->id));
  return say(text::reach_no_lease, who, lan ? name_of(index_.lab(), lan->id) : segment(port));
}

// Whether the lease that a card did not get would have named a next hop.
bool Explainer::would_lead_on(std::uint32_t port) const {
  const std::uint32_t s = n_.ports()[port].segment;
  if (s == kNowhere) return true; // a LAN's router gives them
  const Segment& segment = index_.lab().segments[s];
  const Lan* lan = segment.type == SegmentKind::bridged ? index_.lan(segment.lan) : nullptr;
  return segment.gateway4 || segment.type == SegmentKind::nat || (lan && lan->gateway4);
}

std::optional<Message> Explainer::no_lease(std::uint32_t node) const {
  const ReachAddress* h = holder();
  if (!end_.address.is_v4()) return std::nullopt;
  for (std::uint32_t p = n_.nodes()[node].first_port; p < n_.nodes()[node].end_port; ++p) {
    const ReachPort& port = n_.ports()[p];
    if (!port.wants_lease || port.piece == kNowhere || has_address(p, Family::v4)) continue;
    if (would_lead_on(p) || (h && n_.same_network(p, h->port))) return lease_missing(p);
  }
  return std::nullopt;
}

// It is beside the one it sends to, or could be, without an address there or without a card at all.
std::optional<Message> Explainer::unaddressed() const {
  const std::uint32_t at = n_.node_of(end_.node);
  if (at == kNowhere || n_.nodes()[at].id.kind != Kind::machine) return std::nullopt;
  const ReachNode& node = n_.nodes()[at];
  const auto is_plugged = [](const ReachPort& p) { return p.piece != kNowhere; };
  const auto ports = n_.ports().subspan(node.first_port, node.end_port - node.first_port);
  if (std::none_of(ports.begin(), ports.end(), is_plugged)) return say(text::reach_no_card, here());
  const ReachAddress* h = holder();
  if (!h) return std::nullopt;
  for (std::uint32_t p = node.first_port; p < node.end_port; ++p) {
    if (!is_plugged(n_.ports()[p]) || !n_.same_network(p, h->port)) continue;
    const auto own = n_.addresses(n_.ports()[p]);
    if (std::none_of(own.begin(), own.end(),
                     [&](const ReachAddress& a) { return a.address.family() == end_.address.family(); }))
      return say(text::reach_unaddressed, here(), segment(p), address());
  }
  return std::nullopt;
}

// The LAN's router is there, but nobody knows its address.
std::optional<Message> Explainer::no_gateway() const {
  const ReachAddress* h = holder();
  if (!h || !is_beyond(h->port) || !end_.address.is_v4()) return std::nullopt;
  const std::uint32_t node = n_.node_of(end_.node);
  for (std::uint32_t p = n_.nodes()[node].first_port; p < n_.nodes()[node].end_port; ++p)
    for (std::uint32_t q = 0; q < n_.ports().size(); ++q) {
      const AnyId other = n_.nodes()[n_.ports()[q].node].id;
      const Lan* lan = other.kind == Kind::lan ? index_.lan(LanId{other.number}) : nullptr;
      if (lan && !lan->gateway4 && !is_beyond(q) && n_.same_network(p, q))
        return say(text::reach_no_gateway, name_of(index_.lab(), lan->id), here());
    }
  return std::nullopt;
}

std::optional<Message> Explainer::no_exit() const {
  const ReachAddress* h = holder();
  if (!h || !is_beyond(h->port)) return std::nullopt;
  if (end_.node.kind == Kind::pc && q_.to.kind == Kind::outside && index_.lab().lans.empty())
    return say(text::reach_no_lan);
  for (std::uint32_t p = 0; p < n_.ports().size(); ++p)
    if (is_beyond(p) && n_.nodes()[n_.ports()[p].node].id.kind != Kind::outside) return std::nullopt;
  return say(text::reach_no_exit, here());
}

// Nobody beside a machine passes packets on.
std::optional<Message> Explainer::no_next_hop() const {
  const std::uint32_t node = n_.node_of(end_.node);
  std::vector<std::string> segments;
  for (std::uint32_t p = n_.nodes()[node].first_port; p < n_.nodes()[node].end_port; ++p) {
    if (n_.ports()[p].piece == kNowhere) continue;
    for (const std::uint32_t q : n_.forwarders()) {
      const ReachPort& other = n_.ports()[q];
      if (other.node != node && (end_.address.is_v4() ? other.forwards4 : other.forwards6) &&
          n_.same_network(p, q))
        return std::nullopt;
    }
    segments.push_back(segment(p));
  }
  if (segments.empty() || end_.node.kind != Kind::machine) return std::nullopt;
  return say(text::reach_no_next_hop, here(), address(), std::move(segments));
}

Message Explainer::no_route() const {
  const std::uint32_t node = n_.node_of(end_.node);
  if (auto m = misplaced()) return *m;
  if (auto m = no_lease(node)) return *m;
  if (auto m = unaddressed()) return *m;
  if (auto m = no_exit()) return *m;
  if (auto m = no_gateway()) return *m;
  if (auto m = no_next_hop()) return *m;
  return say(end_.back ? text::reach_no_route_back : text::reach_no_route, here(), address());
}

} // namespace snug
