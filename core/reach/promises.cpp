#include "core/reach/promises.h"

#include <algorithm>

namespace snug {

namespace {

// A node, and the segment it stands for; kNowhere: itself.
struct Subject {
  std::uint32_t node = kNowhere;
  std::uint32_t segment = kNowhere;
};

bool is_on_segment(const ReachNetwork& n, const ReachNode& node, std::uint32_t segment) {
  for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
    if (n.ports()[p].segment == segment && n.ports()[p].piece != kNowhere) return true;
  return false;
}

class Judge {
 public:
  Judge(Reach& reach, const Index& index, const Promise& p)
      : reach_(reach), index_(index), n_(reach.network()), promise_(p), never_(p.must == PromiseKind::never) {
  }

  Judged run() {
    const std::vector<Subject> from = subjects(promise_.from, false), to = subjects(promise_.to, true);
    crowd_ = from.size() * to.size() > kFew;
    std::vector<std::uint64_t> asked; // pairs of classes
    for (const Subject& f : from)
      for (const Subject& t : to) {
        if (f.node == t.node) continue;
        // Machines of one class need not offer the same.
        const std::uint32_t target = promise_.port != 0 ? t.node : alike(t.node);
        const std::uint64_t pair = std::uint64_t{alike(f.node)} << 32U | target;
        const auto at = std::lower_bound(asked.begin(), asked.end(), pair);
        if (at != asked.end() && *at == pair) continue;
        asked.insert(at, pair);
        if (!judge_pair(f, t)) return result_;
      }
    return result_;
  }

 private:
  std::vector<Subject> subjects(AnyId, bool as_target) const;
  std::vector<Address> addresses(const Subject& from, const Subject& to);
  struct Try {
    Address target;
    Transport transport = Transport::icmp;
    std::int32_t port = 0;
  };
  std::vector<Try> tries(const Subject& from, const Subject& to);
  bool leaves_by(const ReachAnswer&, const Subject& from) const;
  bool judge_pair(const Subject& from, const Subject& to);
  std::uint32_t alike(std::uint32_t node) { return crowd_ ? reach_.classes().of(node) : node; }

  static constexpr std::size_t kFew = 32; // pairs: asking each is less work than finding who is alike
  Reach& reach_;
  const Index& index_;
  const ReachNetwork& n_;
  const Promise& promise_;
  bool never_, crowd_ = false;
  Judged result_;
};

std::vector<Subject> Judge::subjects(AnyId id, bool as_target) const {
  if (id.kind == Kind::machine) {
    const std::uint32_t node = n_.node_of(id);
    return node == kNowhere ? std::vector<Subject>{} : std::vector<Subject>{{node, kNowhere}};
  }
  std::vector<Subject> out;
  const auto nodes = n_.nodes();
  const std::uint32_t segment = id.kind == Kind::segment ? index_.place(id) : kNowhere;
  for (std::uint32_t i = 0; i < nodes.size(); ++i) {
    const ReachNode& node = nodes[i];
    const bool system = node.id.kind == Kind::machine || node.id.kind == Kind::pc;
    switch (id.kind) {
    case Kind::segment:
      if (system && node.on && is_on_segment(n_, node, segment)) out.push_back({i, segment});
      break;
    case Kind::everyone:
      if (node.id.kind == Kind::machine && node.on) out.push_back({i, kNowhere});
      break;
    case Kind::outside: // that one of all can be reached is enough, but none may leak
      if (node.id.kind == Kind::outside || (node.id.kind == Kind::lan && (never_ || !as_target)))
        out.push_back({i, kNowhere});
      break;
    default:
      break;
    }
  }
  return out;
}

std::vector<Address> Judge::addresses(const Subject& from, const Subject& to) {
  if (to.segment == kNowhere) return reach_.targets(n_.nodes()[from.node].id, n_.nodes()[to.node].id);
  std::vector<Address> out;
  const ReachNode& node = n_.nodes()[to.node];
  for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
    if (n_.ports()[p].segment == to.segment)
      for (const ReachAddress& a : n_.addresses(n_.ports()[p]))
        if (a.address.is_v4() || !is_link_local(a.address)) out.push_back(a.address);
  return out;
}

// Its own addresses, and port forwards: for a service to the machine, and for what must never get in at all.
std::vector<Judge::Try> Judge::tries(const Subject& from, const Subject& to) {
  std::vector<Try> out;
  for (const Address& a : addresses(from, to)) out.push_back({a, promise_.transport, promise_.port});
  if (!never_ && to.segment != kNowhere) return out;
  for (const Reach::WayIn& w : reach_.ways_in(n_.nodes()[to.node].id)) {
    const bool asked = w.transport == promise_.transport && w.to_port == promise_.port;
    if (asked || (never_ && promise_.port == 0 && promise_.transport == Transport::icmp))
      out.push_back({w.address, w.transport, w.to_port});
  }
  return out;
}

// Whether the packets of a segment's machine are the segment's. One that has no way at all counts where it
// is on no other segment.
bool Judge::leaves_by(const ReachAnswer& a, const Subject& from) const {
  if (from.segment == kNowhere) return true;
  const ReachNode& node = n_.nodes()[from.node];
  const auto ports = n_.ports();
  if (!a.steps.empty() && a.steps.front().what == Decision::sends) {
    const ReachStep& s = a.steps.front();
    for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
      if (ports[p].id == s.card && ports[p].segment == from.segment) {
        const auto here = n_.addresses(ports[p]);
        const bool only = p == node.first_port || ports[p - 1].id != s.card;
        const bool last = p + 1 == node.end_port || ports[p + 1].id != s.card;
        if ((only && last) || std::any_of(here.begin(), here.end(), [&](const ReachAddress& x) {
              return x.length <= x.address.bits() && Prefix::of(x.address, x.length).contains(s.address);
            }))
          return true;
      }
    return false;
  }
  for (std::uint32_t p = node.first_port; p < node.end_port; ++p)
    if (ports[p].segment != from.segment && ports[p].piece != kNowhere && !n_.addresses(ports[p]).empty())
      return false;
  return true;
}

// False: the promise is broken, result_ says by whom.
bool Judge::judge_pair(const Subject& from, const Subject& to) {
  ReachQuestion q;
  q.from = n_.nodes()[from.node].id;
  q.to = n_.nodes()[to.node].id;
  q.transport = promise_.transport;
  q.port = promise_.port;
  if (!n_.nodes()[from.node].on) return true;
  result_.present = true;
  const auto keep = [&](ReachAnswer&& a, bool kept) {
    result_ = {true, kept, q, std::move(a), true};
    return kept;
  };
  const std::vector<Try> all = tries(from, to);
  if (all.empty()) { // off, or without address: nothing arrives
    ReachAnswer a = reach_.ask(q);
    return never_ || (from.segment != kNowhere && !leaves_by(a, from)) || keep(std::move(a), false);
  }
  std::optional<ReachAnswer> failed;
  for (const Try& t : all) {
    q.target = t.target;
    q.transport = t.transport;
    q.port = t.port;
    // The first that fails is told of; of others only whether they reach.
    if (failed && !never_ && from.segment == kNowhere && reach_.verdict(q) != Reached::reaches) continue;
    ReachAnswer a = reach_.ask(q);
    if (!leaves_by(a, from)) continue;
    const bool unanswered = promise_.port == 0 && a.end && a.end->what == Decision::not_offered;
    const bool arrives = a.verdict != Reached::does_not_reach || unanswered;
    if (never_ && arrives) return keep(std::move(a), false);
    if (!never_ && a.verdict == Reached::reaches) return keep(std::move(a), true);
    if (!failed) failed = std::move(a);
  }
  if (!failed) return true;
  q.target = failed->target;
  q.transport = promise_.transport;
  q.port = promise_.port;
  return keep(std::move(*failed), never_);
}

} // namespace

bool speaks_of(const Promise& p, ExerciseId exercise) {
  return p.exercises.empty() ||
         std::find(p.exercises.begin(), p.exercises.end(), exercise) != p.exercises.end();
}

Judged judge(Reach& reach, const Index& index, const Promise& p) { return Judge(reach, index, p).run(); }

} // namespace snug
