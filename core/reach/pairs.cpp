#include "core/reach/pairs.h"

#include <algorithm>

namespace snug {

namespace {

constexpr std::int32_t kSmall = 84; // an echo of 56 octets

// Octets that every card must take so that sizes stop nothing.
std::int32_t size_for(const ReachNetwork& n, const ReachQuestion& shape) {
  std::int32_t size = std::max(kSmall, shape.size);
  if (shape.full_size)
    for (const ReachPort& p : n.ports()) size = std::max(size, p.mtu);
  return size;
}

bool has_six(const ReachNetwork& n, const ReachNode& node) {
  for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
    for (const ReachAddress& a : n.addresses(n.ports()[p]))
      if (!a.address.is_v4() && !is_link_local(a.address)) return true;
  return false;
}

bool has_six_ways(const ReachNetwork& n, const ReachNode& node) {
  const auto routes = n.routes(node);
  return std::any_of(routes.begin(), routes.end(),
                     [](const ReachRoute& r) { return !r.to.is_v4() && !is_link_local(r.to.network()); });
}

} // namespace

ReachPairs::ReachPairs(Reach& reach, const ReachQuestion& shape) : classes_(&reach.classes()) {
  const std::uint32_t n = classes_->size();
  const ReachNetwork& network = reach.network();
  const std::span<const ReachNode> nodes = network.nodes();
  ReachQuestion q = shape;
  q.target.reset();
  q.by = {};
  q.port = 0;
  const auto ask = [&](std::uint32_t from, std::uint32_t to) {
    q.from = nodes[from].id;
    q.to = nodes[to].id;
    return reach.verdict(q);
  };
  for (std::uint32_t c = 0; c < n; ++c) {
    const auto members = classes_->members(c);
    const ReachNode& front = nodes[members.front()];
    fronts_.push_back(members.front());
    off_.push_back(front.on ? 0 : 1);
    six_.push_back(has_six(network, front) ? 1 : 0);
    six_ways_.push_back(has_six_ways(network, front) ? 1 : 0);
    self_.push_back(ask(members.front(), members.front()));
    among_.push_back(ask(members.front(), members.back()));
  }
  if (reach.is_certain() && shape.hop_limit == ReachQuestion{}.hop_limit) {
    ways_ = std::make_unique<ReachWays>(network, fronts_, size_for(network, shape));
    known_ = std::make_unique<Deliveries>(*ways_);
    known_->find_answers();
  }
  ask_unsure(reach, q);
}

// By what is known of addresses: one that is reached is enough, else the best of all.
std::optional<Reached> ReachPairs::decided(std::uint32_t from, std::uint32_t to) const {
  if (from == to) return among_[from];
  if (off_[from] != 0 || off_[to] != 0) return Reached::does_not_reach;
  if (!known_) return std::nullopt;
  Reached best = Reached::does_not_reach;
  bool sure = six_[to] == 0 || six_ways_[from] == 0;
  for (const std::uint32_t c : ways_->columns_of(to)) {
    if (known_->unsure(from, c)) {
      sure = false;
      continue;
    }
    if (known_->answered(from, c)) return Reached::reaches;
    if (known_->arrives(from, c)) best = Reached::one_way;
  }
  return sure ? std::optional(best) : std::nullopt;
}

// Where all of IPv4 is decided, only IPv6 is left to ask for.
void ReachPairs::ask_unsure(Reach& reach, ReachQuestion& q) {
  const std::uint32_t n = classes_->size();
  const bool only_six = known_ && known_->all_sure();
  std::vector<std::uint32_t> from, to;
  for (std::uint32_t c = 0; c < n; ++c) {
    if (!only_six || six_ways_[c] != 0) from.push_back(c);
    if (!only_six || six_[c] != 0) to.push_back(c);
  }
  const std::span<const ReachNode> nodes = reach.network().nodes();
  for (const std::uint32_t a : from)
    for (const std::uint32_t b : to) {
      if (decided(a, b)) continue;
      if (asked_verdicts_.empty()) asked_verdicts_.assign(std::size_t{n} * n, kOpen);
      q.from = nodes[fronts_[a]].id;
      q.to = nodes[fronts_[b]].id;
      asked_verdicts_[std::size_t{a} * n + b] = static_cast<std::uint8_t>(reach.verdict(q));
      ++asked_;
    }
}

Reached ReachPairs::of_classes(std::uint32_t from, std::uint32_t to) const {
  if (!asked_verdicts_.empty())
    if (const std::uint8_t r = asked_verdicts_[std::size_t{from} * classes_->size() + to]; r != kOpen)
      return static_cast<Reached>(r);
  return *decided(from, to);
}

} // namespace snug
