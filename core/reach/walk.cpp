#include "core/reach/walk.h"

#include <algorithm>
#include <array>
#include <limits>

namespace snug {

namespace {

constexpr std::int32_t kAny = std::numeric_limits<std::int32_t>::max();
constexpr std::size_t kMostBranches = 64;
constexpr int kMostShrinks = 8;
constexpr std::int32_t kError = 84; // octets

} // namespace

std::string_view word(Decision d) {
  constexpr std::array<std::string_view, 27> kWords{
      "sends",         "forwards",         "translates",   "restores",   "redirects",   "receives",
      "is-off",        "no-source",        "no-route",     "refuses",    "not-plugged", "nobody",
      "unheard",       "ignores",          "other-macs",   "separated",  "same-mac",    "too-big",
      "must-fragment", "does-not-forward", "reverse-path", "own-source", "hop-limit",   "link-scope",
      "someone-else",  "other-source",     "not-offered"};
  return kWords[static_cast<std::size_t>(d)];
}

// The branches are the different neighbours that could answer: when they differ, chance decides.
Reached Walker::ask(const ReachProbe& probe) {
  probe_ = probe;
  choices_.clear();
  kept_.clear();
  ambiguous_.reset();
  std::optional<Reached> first;
  bool any_ok = false, any_not = false, differ = false;
  for (std::size_t i = 0; i < kMostBranches; ++i) {
    choice_ = 0;
    unsure_.reset();
    const Reached r = probe.full_size ? transfer(probe) : ask_once(probe);
    const bool ok = r == Reached::reaches;
    if (!ok && !any_not) kept_.assign(hops_.begin(), hops_.end());
    if (unsure_) ambiguous_ = unsure_;
    differ |= first && r != *first;
    if (!first || (!ok && !any_not)) first = r;
    (ok ? any_ok : any_not) = true;
    if (!next_branch()) break;
  }
  if (any_not) hops_.assign(kept_.begin(), kept_.end()); // a swap would leave the smaller one to grow again
  if (any_ok && any_not) return Reached::unreliable;
  if (!differ) ambiguous_.reset();
  return *first;
}

bool Walker::next_branch() {
  while (!choices_.empty() && choices_.back().picked + 1 == choices_.back().count) choices_.pop_back();
  if (choices_.empty()) return false;
  ++choices_.back().picked;
  return true;
}

std::size_t Walker::choose(std::size_t count) {
  if (count < 2) return 0;
  if (choice_ == choices_.size()) choices_.push_back({0, count});
  return choices_[choice_++].picked;
}

// As large as the first card takes. TCP agrees on the smaller of both ends' and learns what a router tells
// (RFC 9293 3.7.1, RFC 1191); what vanishes on the way stalls it.
Reached Walker::transfer(const ReachProbe& probe) {
  ReachProbe p = probe;
  p.size = probe.target.is_v4() ? 84 : 104;
  const Reached small = ask_once(p);
  if (small != Reached::reaches || out_mtu_[0] == 0) return small;
  p.size = out_mtu_[0];
  if (probe.transport == Transport::tcp) {
    if (out_mtu_[1] != 0) p.size = std::min(p.size, out_mtu_[1]);
    p.keep_whole = true;
  }
  choice_ = 0;
  for (int i = 0; i < kMostShrinks; ++i) {
    p.keep_neighbours = true;
    const Reached r = ask_once(p);
    if (probe.transport != Transport::tcp) return r;
    // Only what is sent is long, what comes back is short.
    if (r == Reached::reaches) return r;
    if (hops_.empty() || hops_.back().back) return small;
    if (hops_.back().what != Decision::must_fragment || error_mtu_ >= p.size) return Reached::does_not_reach;
    if (!error_returns()) return Reached::does_not_reach;
    p.size = error_mtu_;
  }
  return Reached::does_not_reach;
}

// IPv6 senders learn the size that a router tells them and cut their packets (RFC 8201).
Reached Walker::ask_once(const ReachProbe& probe) {
  path_mtu_[0] = path_mtu_[1] = kAny;
  const std::size_t choice = choice_;
  for (int i = 0; i < kMostShrinks; ++i) {
    choice_ = choice;
    const Reached r = exchange(probe);
    if (r == Reached::reaches || hops_.empty() || probe.target.is_v4() || probe.keep_whole) return r;
    const ReachHop end = hops_.back();
    if (end.what != Decision::must_fragment || end.node == probe.from) return r;
    if (error_mtu_ >= path_mtu_[end.back ? 1 : 0] || !error_returns()) return r;
    path_mtu_[end.back ? 1 : 0] = error_mtu_;
  }
  return Reached::does_not_reach;
}

Reached Walker::exchange(const ReachProbe& probe) {
  hops_.clear();
  translations_.clear();
  out_mtu_[0] = out_mtu_[1] = 0;
  if (!probe.keep_neighbours) {
    learned_.clear();
    spoke_.clear();
  }
  if (!n_.nodes()[probe.from].on) {
    stop(probe.from, kNowhere, Decision::is_off, {});
    return Reached::does_not_reach;
  }
  Packet there;
  there.to = probe.target;
  there.size = probe.size;
  there.left = probe.hop_limit;
  there.port = probe.port;
  const std::uint32_t at = travel(there, probe.from, probe.by);
  if (at == kNowhere) return Reached::does_not_reach;
  if (at != probe.to) {
    stop(at, kNowhere, Decision::someone_else, probe.target);
    return Reached::does_not_reach;
  }
  if (there.to.is_v4() && translates(at)) translations_.push_back({at, *there.from, *there.from, there.to});
  Packet back;
  back.from = there.to;
  back.to = there.from.value_or(Address());
  back.size = probe.transport == Transport::tcp && probe.full_size ? 60 : probe.size;
  back.back = true;
  // An answer to a link-local address leaves by the card where the question came in; an echo of IPv6 does so
  // where two ways are equal (seen in the kernel).
  if (!back.to.is_v4() && probe.transport == Transport::icmp && at != probe.from)
    back.near = hops_.back().port;
  const std::uint32_t by =
      !back.to.is_v4() && is_link_local(back.to) && at != probe.from ? hops_.back().port : kNowhere;
  const std::uint32_t home = travel(back, at, by);
  // UDP and TCP ask one address (RFC 1122 4.1.3.5).
  if (home == probe.from && (probe.transport == Transport::icmp || back.from == probe.target))
    return Reached::reaches;
  if (home == probe.from)
    stop(home, kNowhere, Decision::other_source, *back.from);
  else if (home != kNowhere)
    stop(home, kNowhere, Decision::someone_else, back.to);
  return Reached::one_way;
}

bool Walker::stop(std::uint32_t node, std::uint32_t port, Decision what, const Address& a) {
  const bool back = !hops_.empty() && hops_.back().back;
  hops_.push_back({node, port, what, a, back});
  return false;
}

std::uint32_t Walker::travel(Packet& p, std::uint32_t node, std::uint32_t by) {
  std::uint32_t in = kNowhere;
  const auto end = [&](Decision what, const Address& a) {
    hops_.push_back({node, in, what, a, p.back});
    return kNowhere;
  };
  for (;;) {
    if (in == kNowhere ? n_.owns(n_.nodes()[node], p.to) : false) {
      if (!p.from) p.from = p.to;
      hops_.push_back({node, by, Decision::receives, p.to, p.back});
      return node;
    }
    const auto way = route(node, p, in, by);
    if (in == kNowhere && refuses(p)) return end(Decision::refuses, p.to);
    if (way && way->broadcast) {
      if (!p.back || in != kNowhere || probe_.transport == Transport::tcp)
        return end(Decision::refuses, p.to);
      return flood(p, way->port);
    }
    if (!way) return end(Decision::no_route, p.to);
    const std::uint32_t next = leave(p, node, in, *way);
    if (next == kNowhere) return kNowhere;
    in = next;
    by = kNowhere;
    node = n_.ports()[in].node;
    bool is_mine = false;
    if (!accepts(p, in, is_mine)) return kNowhere;
    if (is_mine) {
      hops_.push_back({node, in, Decision::receives, p.to, p.back});
      return node;
    }
    if (!may_pass(p, in)) return kNowhere;
    --p.left;
  }
}

// A broadcast frame: everybody in the network takes it.
std::uint32_t Walker::flood(const Packet& p, std::uint32_t port) {
  const ReachNode& home = n_.nodes()[probe_.from];
  for (std::uint32_t q = home.first_port; q < home.end_port; ++q)
    if (n_.owns(home, p.to) && n_.frame(port, q, p.size) == FrameStop::none) {
      hops_.push_back({probe_.from, q, Decision::receives, p.to, p.back});
      return probe_.from;
    }
  hops_.push_back({n_.ports()[port].node, port, Decision::refuses, p.to, p.back});
  return kNowhere;
}

// Whether the error that names a smaller size finds its way to who sent the packet.
bool Walker::error_returns() {
  if (!lost_from_ || hops_.empty()) return false;
  const std::size_t hops = hops_.size();
  const ReachHop end = hops_.back();
  Packet error;
  error.to = *lost_from_;
  error.size = kError;
  error.back = error.is_error = true;
  const bool home = travel(error, end.node, kNowhere) == (end.back ? probe_.to : probe_.from);
  hops_.resize(hops);
  return home;
}

} // namespace snug
