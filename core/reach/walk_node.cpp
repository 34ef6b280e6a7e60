#include "core/reach/walk.h"

#include <algorithm>

namespace snug {

// What a system does with a packet: routes, filters, translation, sizes.

std::optional<Walker::Way> Walker::route(std::uint32_t node, const Packet& packet, std::uint32_t in,
                                         std::uint32_t by) {
  const ReachNode& n = n_.nodes()[node];
  const Address& to = packet.to;
  if (to.is_v4() && is_broadcast(node, to))
    for (std::uint32_t p = n.first_port; p < n.end_port; ++p)
      for (const ReachAddress& a : n_.addresses(n_.ports()[p]))
        if (a.address.is_v4() && a.length < 31 && Prefix::of(a.address, a.length).last() == to)
          return Way{p, to, a.address, true};
  const ReachRoute* best = nullptr;
  for (const ReachRoute& r : n_.routes(n)) {
    if (!r.to.contains(to) || (by != kNowhere && r.port != by)) continue;
    if (best && (r.to != best->to || r.metric != best->metric)) break;
    if (!best || r.port == packet.near) best = &r;
    if (in != kNowhere || packet.near == kNowhere || best->port == packet.near) break;
  }
  if (!best) return std::nullopt;
  return Way{best->port, best->via.value_or(to), best->source, false};
}

bool Walker::is_broadcast(std::uint32_t node, const Address& to) const {
  const ReachNode& n = n_.nodes()[node];
  for (std::uint32_t p = n.first_port; p < n.end_port; ++p)
    for (const ReachAddress& a : n_.addresses(n_.ports()[p]))
      if (a.address.is_v4() && a.length < 31 && Prefix::of(a.address, a.length).last() == to) return true;
  return false;
}

bool Walker::refuses(const Packet& p) const {
  if (is_multicast(p.to) || is_loopback(p.to)) return true;
  return p.to == Address() || p.to == Address::v4(0xffff'ffff) || (p.from && is_loopback(*p.from));
}

// What was translated here on its way out gets its inside address back (RFC 3022 4.1).
void Walker::restore(Packet& p, std::uint32_t node) {
  if (!p.back) return;
  for (const Translation& t : translations_)
    if (t.node == node && !t.redirected && t.outside == p.to && t.inside != t.outside &&
        (p.is_error || t.other == p.from)) {
      p.to = t.inside;
      hops_.push_back({node, kNowhere, Decision::restores, p.to, p.back});
      return;
    }
}

// A port forward of a translator, from its outer side.
void Walker::redirect(Packet& p, std::uint32_t in) {
  const ReachPort& port = n_.ports()[in];
  if (p.back || p.port == 0 || !port.translates || !n_.owns(n_.nodes()[port.node], p.to)) return;
  for (const ReachForward& f : n_.forwards()) {
    if (f.node != port.node || f.transport != probe_.transport || f.port != p.port) continue;
    translations_.push_back({port.node, f.to, p.to, *p.from, true});
    hops_.push_back({port.node, in, Decision::redirects, f.to, p.back, f.port});
    p.to = f.to;
    p.port = f.to_port;
    return;
  }
}

bool Walker::accepts(Packet& p, std::uint32_t in, bool& is_mine) {
  const ReachPort& port = n_.ports()[in];
  const ReachNode& n = n_.nodes()[port.node];
  if (p.to.is_v4()) {
    restore(p, port.node);
    if (p.from) {
      if (n_.owns(n, *p.from)) return stop(port.node, in, Decision::own_source, *p.from);
      if (is_loopback(*p.from)) return stop(port.node, in, Decision::refuses, *p.from);
      if (!reverse_ok(in, *p.from)) return stop(port.node, in, Decision::reverse_path, *p.from);
    }
    redirect(p, in);
    is_mine = n_.owns(n, p.to);
    return true;
  }
  for (const ReachAddress& a : n_.with(p.to))
    is_mine |= is_link_local(p.to) ? a.port == in : a.port >= n.first_port && a.port < n.end_port;
  return true;
}

// RFC 3704: strict asks for the same card, loose for any way back; a broadcast address is none.
bool Walker::reverse_ok(std::uint32_t in, const Address& source) const {
  const ReachPort& port = n_.ports()[in];
  const ReachNode& n = n_.nodes()[port.node];
  if (n.filter == ReverseFilter::off) return true;
  if (n_.owns(n, source) || is_broadcast(port.node, source)) return false;
  const auto here = n_.addresses(port);
  const bool has_address =
      std::any_of(here.begin(), here.end(), [](const ReachAddress& a) { return a.address.is_v4(); });
  for (const ReachRoute& r : n_.routes(n)) {
    if (!r.to.contains(source)) continue;
    if (r.port == in) return true;
    return has_address && n.filter == ReverseFilter::loose;
  }
  return false;
}

bool Walker::may_pass(const Packet& p, std::uint32_t in) {
  const ReachPort& port = n_.ports()[in];
  const auto end = [&](Decision what) { return stop(port.node, in, what, p.to); };
  if (!(p.to.is_v4() ? port.forwards4 : port.forwards6)) return end(Decision::does_not_forward);
  if (!p.to.is_v4() && (is_link_local(p.to) || (p.from && is_link_local(*p.from))))
    return end(Decision::link_scope);
  if (p.left <= 1) return end(Decision::hop_limit);
  return true;
}

// Cuts a packet for the next card, or says that it may not be cut.
bool Walker::fit(Packet& p, std::uint32_t node, std::uint32_t in, const Way& way) {
  const bool v4 = p.to.is_v4();
  std::int32_t mtu = n_.ports()[way.port].mtu;
  std::int32_t& known = path_mtu_[p.back ? 1 : 0];
  if (in == kNowhere) {
    out_mtu_[p.back ? 1 : 0] = mtu;
    mtu = std::min(mtu, known);
  }
  if (p.size <= mtu) return true;
  const bool whole = probe_.keep_whole || (probe_.full_size && probe_.transport == Transport::tcp);
  if ((whole && !p.back) || (!v4 && in != kNowhere)) {
    error_mtu_ = mtu;
    lost_from_ = p.from;
    hops_.push_back({node, way.port, Decision::must_fragment, p.to, p.back});
    return false;
  }
  const std::int32_t header = v4 ? 20 : 48;
  p.size = (mtu - header) / 8 * 8 + header;
  return true;
}

bool Walker::translates(std::uint32_t node) const {
  const ReachNode& n = n_.nodes()[node];
  const auto ports = n_.ports().subspan(n.first_port, n.end_port - n.first_port);
  return std::any_of(ports.begin(), ports.end(), [](const ReachPort& p) { return p.translates; });
}

// Masquerading: what leaves by this card gets its address (RFC 3022 2.2). A translator knows who has begun:
// answers pass as they are, but one of UDP that it does not know looks like a beginning.
bool Walker::translate(Packet& p, std::uint32_t node, const Way& way) {
  if (!p.to.is_v4() || p.is_error || !translates(node)) return true;
  const auto becomes = [&](const Address& a) {
    if (a == *p.from) return true;
    p.from = a;
    hops_.push_back({node, way.port, Decision::translates, a, p.back});
    return true;
  };
  for (const Translation& t : translations_) {
    if (t.node != node) continue;
    if (p.back && t.redirected && t.inside == p.from && t.other == p.to) return becomes(t.outside);
    if (p.back && !t.redirected && t.inside == p.to && t.other == p.from) return true;
    if (!p.back && !t.redirected && t.inside == p.from && t.other == p.to) return becomes(t.outside);
  }
  if (p.back && probe_.transport != Transport::udp) return true;
  std::optional<Address> outside = p.from;
  if (n_.ports()[way.port].translates) outside = n_.source4(way.port, way.neighbour);
  if (!outside) return stop(node, way.port, Decision::no_source, p.to);
  translations_.push_back({node, *p.from, *outside, p.to, false});
  return becomes(*outside);
}

std::uint32_t Walker::leave(Packet& p, std::uint32_t node, std::uint32_t in, const Way& way) {
  const ReachPort& port = n_.ports()[way.port];
  const auto end = [&](Decision what) {
    hops_.push_back({node, way.port, what, way.neighbour, p.back});
    return kNowhere;
  };
  if (!p.from) {
    if (p.to.is_v4())
      p.from = way.source ? way.source : n_.source4(way.port, way.neighbour);
    else
      p.from = n_.source6(way.port, p.to);
    if (!p.from) return end(Decision::no_source);
    if (is_loopback(*p.from)) return end(Decision::refuses);
  }
  hops_.push_back(
      {node, way.port, in == kNowhere ? Decision::sends : Decision::forwards, way.neighbour, p.back});
  if (!fit(p, node, in, way) || !translate(p, node, way)) return kNowhere;
  if (port.piece == kNowhere) return end(Decision::not_plugged);
  const std::uint32_t at = neighbour(way.port, way.neighbour, p);
  if (at == kNowhere) return kNowhere;
  const FrameStop stopped = n_.frame(way.port, at, p.size);
  switch (stopped) {
  case FrameStop::none:
    break;
  case FrameStop::too_big:
    return end(Decision::too_big);
  case FrameStop::other_mac:
    return end(Decision::other_macs);
  case FrameStop::separated:
    return end(Decision::separated);
  case FrameStop::same_mac:
    return end(Decision::same_mac);
  case FrameStop::apart:
    return end(Decision::nobody);
  }
  const std::uint32_t arrived = receiver(way.port, at);
  speak(way.port);
  return arrived;
}

} // namespace snug
