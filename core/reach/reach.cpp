#include "core/reach/reach.h"

#include "core/budget/budget.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace snug {

Reach::Reach(const Index& index, const AddressesInUse& addresses, ExerciseId exercise, ReachAssumptions a)
    : Reach(index, addresses, running(index, exercise), a) {}

Reach::Reach(const Index& index, const AddressesInUse& addresses, std::span<const std::uint8_t> running,
             ReachAssumptions assumptions)
    : index_(index), assumptions_(assumptions) {
  LeaseChoices choices;
  do {
    networks_.emplace_back(index, addresses, running, choices);
    if (networks_.size() == LeaseChoices::kMost && choices.next() && choices.sample()) networks_.clear();
  } while (networks_.empty() || (networks_.size() < LeaseChoices::kMost && choices.next()));
  for (const ReachNetwork& n : networks_) walkers_.emplace_back(n, assumptions);
}

Reach::Reach(const Reach& like, std::span<const std::uint8_t> running)
    : index_(like.index_), assumptions_(like.assumptions_) {
  networks_.reserve(like.networks_.size());
  for (const ReachNetwork& n : like.networks_) networks_.emplace_back(n, running);
  for (const ReachNetwork& n : networks_) walkers_.emplace_back(n, assumptions_);
}

bool Reach::nodes_of(const ReachQuestion& q, ReachProbe& p) const {
  const ReachNetwork& n = networks_.front();
  p.from = n.node_of(q.from);
  p.to = n.node_of(q.to);
  if (p.from == kNowhere || p.to == kNowhere) return false;
  if (q.by) p.by = n.port_of(p.from, q.by);
  p.transport = q.transport;
  p.hop_limit = q.hop_limit;
  p.keep_whole = q.keep_whole;
  p.full_size = q.full_size;
  p.keep_neighbours = q.keep_neighbours;
  return true;
}

Reach::Combined Reach::ask_all(const ReachProbe& probe) {
  Combined c{walkers_.front().ask(probe), 0};
  for (std::size_t i = 1; i < walkers_.size(); ++i) {
    const Reached r = walkers_[i].ask(probe);
    if ((r == Reached::reaches) != (c.verdict == Reached::reaches) || r == Reached::unreliable)
      c.differ |= r != c.verdict;
    if (r != Reached::reaches && c.verdict == Reached::reaches) c.network = i;
  }
  if (c.differ) c.verdict = Reached::unreliable;
  return c;
}

namespace {

// The better verdict first.
int rank(Reached r) {
  constexpr std::array<int, 4> kRank{0, 2, 1, 3};
  return kRank[static_cast<std::size_t>(r)];
}

constexpr std::int32_t kSmall4 = 84, kSmall6 = 104; // an echo of 56 octets

std::int32_t size_of(const ReachQuestion& q, const Address& target) {
  return q.size != 0 ? q.size : target.is_v4() ? kSmall4 : kSmall6;
}

bool offers(const std::vector<Offer>& list, const ReachQuestion& q) {
  return std::any_of(list.begin(), list.end(),
                     [&](const Offer& o) { return o.transport == q.transport && o.port == q.port; });
}

} // namespace

bool Reach::is_offered(const ReachQuestion& q) const {
  if (q.port == 0 || q.transport == Transport::icmp || q.to.kind != Kind::machine) return true;
  const Machine* m = index_.machine(MachineId{q.to.number});
  const Role* role = m ? index_.role(m->role) : nullptr;
  return m && (offers(m->offers, q) || (role && offers(role->offers, q)));
}

ReachAnswer Reach::answer(const ReachProbe& probe, const Combined& c) const {
  const ReachNetwork& n = networks_[c.network];
  ReachAnswer a;
  a.verdict = c.verdict;
  a.target = probe.target;
  a.unsure = walkers_[c.network].ambiguous();
  a.unsure_lease = c.differ;
  for (const ReachHop& h : walkers_[c.network].hops()) {
    ReachStep& s = a.steps.emplace_back();
    s.node = n.nodes()[h.node].id;
    if (h.port != kNowhere) s.card = n.ports()[h.port].id;
    s.what = h.what;
    s.address = h.address;
    s.back = h.back;
    s.service = h.service;
  }
  if (a.verdict != Reached::reaches && !a.steps.empty()) a.end = a.steps.back();
  return a;
}

void Reach::find_targets(std::uint32_t from, std::uint32_t to) {
  const ReachNetwork& n = networks_.front();
  const ReachNode& node = n.nodes()[to];
  const ReachNode& sender = n.nodes()[from];
  targets_.clear();
  for (std::uint32_t p = node.first_port; p < node.end_port; ++p) {
    const Card* card =
        n.ports()[p].id.kind == Kind::card ? index_.card(CardId{n.ports()[p].id.number}) : nullptr;
    int order = card && !card->published ? 2 : 1;
    for (std::uint32_t q = sender.first_port; q < sender.end_port; ++q)
      if (n.same_network(p, q)) order = 0;
    for (const ReachAddress& a : n.addresses(n.ports()[p])) {
      if (is_link_local(a.address) && !a.address.is_v4()) continue;
      const std::pair found(2 * order + (a.address.is_v4() ? 0 : 1), a.address);
      const auto at = std::upper_bound(targets_.begin(), targets_.end(), found,
                                       [](const auto& x, const auto& y) { return x.first < y.first; });
      targets_.insert(at, found);
    }
  }
}

std::vector<Address> Reach::targets(AnyId from, AnyId to) {
  const std::uint32_t f = network().node_of(from), t = network().node_of(to);
  std::vector<Address> out;
  if (f == kNowhere || t == kNowhere) return out;
  find_targets(f, t);
  for (const auto& [order, a] : targets_) out.push_back(a);
  return out;
}

const ReachClasses& Reach::classes() {
  if (!classes_) classes_.emplace(networks_);
  return *classes_;
}

// What to send to, and on which port: the machine itself, then the forwards that lead to it.
std::vector<std::pair<Address, std::int32_t>> Reach::addressed(const ReachQuestion& q) {
  std::vector<std::pair<Address, std::int32_t>> out;
  if (!q.target)
    for (const Address& a : targets(q.from, q.to)) out.emplace_back(a, q.port);
  if (q.port != 0)
    for (const WayIn& w : ways_in(q.to))
      if (w.transport == q.transport && w.to_port == q.port && (!q.target || q.target == w.address))
        out.emplace_back(w.address, w.port);
  if (q.target && out.empty()) out.emplace_back(*q.target, q.port);
  return out;
}

ReachAnswer Reach::ask(const ReachQuestion& q) {
  ReachProbe p;
  ReachAnswer best;
  if (!nodes_of(q, p)) return best;
  const auto tried = addressed(q);
  if (tried.empty()) {
    const bool off = !networks_.front().nodes()[p.to].on;
    best.end = ReachStep{q.to, {}, off ? Decision::is_off : Decision::no_source, {}, false};
    best.steps.push_back(*best.end);
    return best;
  }
  for (const auto& [target, port] : tried) {
    p.target = target;
    p.port = port;
    p.size = size_of(q, target);
    const Combined c = ask_all(p);
    if (best.target && rank(c.verdict) >= rank(best.verdict)) continue;
    best = answer(p, c);
    if (best.verdict == Reached::reaches) break;
  }
  if (best.verdict == Reached::reaches && !is_offered(q)) {
    best.verdict = Reached::does_not_reach;
    best.end = ReachStep{q.to, {}, Decision::not_offered, *best.target, false};
    best.steps.push_back(*best.end);
  }
  return best;
}

Reached Reach::verdict(const ReachQuestion& q) {
  ReachProbe p;
  if (!nodes_of(q, p)) return Reached::does_not_reach;
  Reached best = Reached::does_not_reach;
  const auto try_target = [&](const Address& target, std::int32_t port) {
    p.target = target;
    p.port = port;
    p.size = size_of(q, target);
    if (const Reached r = ask_all(p).verdict; rank(r) < rank(best)) best = r;
  };
  if (q.port != 0) {
    for (const auto& [target, port] : addressed(q))
      if (best != Reached::reaches) try_target(target, port);
  } else if (q.target) {
    try_target(*q.target, 0);
  } else {
    find_targets(p.from, p.to);
    for (std::size_t i = 0; i < targets_.size() && best != Reached::reaches; ++i)
      try_target(targets_[i].second, 0);
  }
  return best == Reached::reaches && !is_offered(q) ? Reached::does_not_reach : best;
}

std::string_view word(Reached r) {
  constexpr std::array<std::string_view, 4> kWords{"reaches", "one way", "unreliable", "does not reach"};
  return kWords[static_cast<std::size_t>(r)];
}

} // namespace snug
