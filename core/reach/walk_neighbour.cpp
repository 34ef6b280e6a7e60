#include "core/reach/walk.h"

#include <algorithm>

namespace snug {

// Who answers for an address in a network: ARP (RFC 826) and neighbour discovery (RFC 4861 7.2).

namespace {

constexpr std::int32_t kAsking = 60; // octets of a question, less than any card takes

Decision as_decision(FrameStop s) {
  switch (s) {
  case FrameStop::other_mac:
    return Decision::other_macs;
  case FrameStop::separated:
    return Decision::separated;
  case FrameStop::same_mac:
    return Decision::same_mac;
  default:
    return Decision::unheard;
  }
}

} // namespace

void Walker::learn(std::uint32_t port, const Address& a, std::uint32_t at) {
  for (Neighbour& n : learned_)
    if (n.port == port && n.address == a) {
      n.at = at;
      return;
    }
  learned_.push_back({port, a, at});
}

std::uint32_t Walker::learned(std::uint32_t port, const Address& a) const {
  for (const Neighbour& n : learned_)
    if (n.port == port && n.address == a) return n.at;
  return kNowhere;
}

// Switches remember where a MAC spoke last; it matters only where two ports have one.
void Walker::speak(std::uint32_t port) {
  if (!n_.ports()[port].mac_twice) return;
  std::erase_if(spoke_, [&](std::uint32_t s) {
    return n_.ports()[s].mac == n_.ports()[port].mac && n_.same_network(s, port);
  });
  spoke_.push_back(port);
}

std::uint32_t Walker::receiver(std::uint32_t out, std::uint32_t at) const {
  if (!n_.ports()[at].mac_twice) return at;
  for (const std::uint32_t s : spoke_)
    if (s != out && n_.ports()[s].mac == n_.ports()[at].mac && n_.same_network(s, at)) return s;
  return at;
}

// Whether a question of `asker` is taken, and gets an answer; Decision::receives: yes.
Decision Walker::takes(std::uint32_t asking, std::uint32_t asked, const Address& asker) const {
  if (const FrameStop there = n_.frame(asking, asked, kAsking); there != FrameStop::none)
    return as_decision(there);
  const ReachNode& n = n_.nodes()[n_.ports()[asked].node];
  const bool ignored = asker.is_v4() && (n_.owns(n, asker) || !reverse_ok(asked, asker));
  return ignored ? Decision::ignores : Decision::receives;
}

Decision Walker::hears(std::uint32_t asking, std::uint32_t asked, const Address& asker) {
  const Decision taken = takes(asking, asked, asker);
  if (taken == Decision::receives) heard_.push_back(asked);
  const FrameStop back = n_.frame(asked, asking, kAsking);
  const bool passes = taken == Decision::receives || taken == Decision::ignores;
  return passes && back != FrameStop::none ? as_decision(back) : taken;
}

// IPv4: a system answers on any card for any of its addresses (RFC 1122 3.3.4.2, weak host). IPv6: only for
// those of the card that was asked.
std::uint32_t Walker::neighbour(std::uint32_t port, const Address& a, const Packet& p) {
  if (const std::uint32_t known = learned(port, a); known != kNowhere) return known;
  const ReachPort& out = n_.ports()[port];
  std::optional<Address> asker = p.from;
  if (a.is_v4()) {
    if (!n_.owns(n_.nodes()[out.node], *asker)) asker = n_.source4(port, a);
  } else if (const auto here = n_.with(*asker);
             std::none_of(here.begin(), here.end(), [&](const ReachAddress& h) { return h.port == port; })) {
    asker = n_.link_local(out);
  }
  Decision why = Decision::nobody;
  candidates_.clear();
  heard_.clear();
  const auto ask_port = [&](std::uint32_t q) {
    if (!n_.same_network(port, q)) return;
    const Decision heard = hears(port, q, asker.value_or(Address()));
    if (heard != Decision::receives)
      why = heard;
    else if (std::find(candidates_.begin(), candidates_.end(), q) == candidates_.end())
      candidates_.push_back(q);
  };
  for (const ReachAddress& holder : n_.with(a)) {
    const ReachNode& n = n_.nodes()[n_.ports()[holder.port].node];
    if (!n.on || n_.ports()[holder.port].node == out.node) continue;
    if (!a.is_v4())
      ask_port(holder.port);
    else
      for (std::uint32_t q = n.first_port; q < n.end_port; ++q) ask_port(q);
  }
  if (candidates_.empty()) {
    hops_.push_back({out.node, port, why, a, p.back});
    return kNowhere;
  }
  std::size_t picked = 0;
  const bool both_answer =
      !a.is_v4() && !assumptions_.detects_duplicates && probe_.transport == Transport::icmp;
  if (both_answer) {
    for (std::size_t i = 0; i < candidates_.size(); ++i)
      if (n_.ports()[candidates_[i]].node == probe_.to) picked = i;
  } else {
    picked = choose(candidates_.size());
    if (candidates_.size() > 1) unsure_ = a;
  }
  const std::uint32_t at = candidates_[picked];
  speak(port);
  speak(at);
  learn(port, a, at);
  if (asker)
    for (const std::uint32_t h : heard_) learn(h, *asker, port); // all who answer, heard or not
  return at;
}

} // namespace snug
