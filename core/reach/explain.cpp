#include "core/reach/explain.h"

#include "core/model/store.h"
#include "core/reach/explainer.h"
#include "core/text/base_text.h"
#include "core/text/reach_text.h"

#include <algorithm>

namespace snug {

Message node_called(const Lab& lab, AnyId node) {
  if (node.kind == Kind::pc) return say(text::node_pc);
  if (node.kind == Kind::outside) return say(text::node_outside);
  if (node.kind == Kind::everyone) return say(text::node_everyone);
  if (node.kind == Kind::segment) return say(text::node_translator, name_of(lab, node));
  if (node.kind == Kind::lan)
    if (const Lan* lan = find<Lan>(lab, LanId{node.number}); lan && !lan->router.empty())
      return say(text::plain, lan->router);
  return say(text::plain, name_of(lab, node));
}

std::string reach_name(const Lab& lab, AnyId node) { return english(node_called(lab, node)); }

namespace {

// As reach_name, without searching the lab for a machine.
std::string named(const Index& index, AnyId node) {
  const Machine* m = node.kind == Kind::machine ? index.machine(MachineId{node.number}) : nullptr;
  return m && !m->name.empty() ? m->name : reach_name(index.lab(), node);
}

} // namespace

std::string subject_name(const Lab& lab, AnyId id) {
  return id.kind == Kind::segment ? name_of(lab, id) : reach_name(lab, id);
}

std::string Explainer::name(AnyId node) const { return named(index_, node); }

// Where the outside is.
bool Explainer::is_beyond(std::uint32_t port) const {
  const ReachPort& outside = n_.ports()[n_.nodes()[n_.node_of({Kind::outside, 0})].first_port];
  return port != kNowhere && n_.ports()[port].piece == outside.piece;
}

std::string Explainer::address() const {
  const ReachAddress* h = holder();
  if (!h || !is_beyond(h->port)) return to_text(end_.address);
  return name(n_.nodes()[n_.ports()[h->port].node].id);
}

// The port where it ends. A router or translator has one name for both of its sides: the one that leads to
// the address.
std::uint32_t Explainer::port() const {
  const std::uint32_t node = n_.node_of(end_.node);
  if (node == kNowhere) return kNowhere;
  const bool two_sides = end_.node.kind == Kind::lan || end_.node.kind == Kind::segment;
  if (two_sides)
    for (const ReachRoute& r : n_.routes(n_.nodes()[node]))
      if (r.to.contains(end_.address) && n_.ports()[r.port].id == end_.card) return r.port;
  for (std::uint32_t p = n_.nodes()[node].first_port; p < n_.nodes()[node].end_port; ++p)
    if (n_.ports()[p].id == end_.card) return p;
  return kNowhere;
}

std::string Explainer::segment(std::uint32_t port) const {
  if (port == kNowhere) return {};
  const ReachPort& p = n_.ports()[port];
  if (p.segment == kNowhere) return name_of(index_.lab(), p.id);
  const Segment& s = index_.lab().segments[p.segment];
  return s.name.empty() ? name_of(index_.lab(), s.id) : s.name;
}

const ReachAddress* Explainer::holder() const {
  const auto all = n_.with(end_.address);
  return all.empty() ? nullptr : &all.front();
}

Message Explainer::not_plugged() const {
  const Card* card = end_.card.kind == Kind::card ? index_.card(CardId{end_.card.number}) : nullptr;
  const std::string its_name = name_of(index_.lab(), end_.card);
  if (card && !card->connected && card->segment)
    return say(text::reach_disconnected, here(), its_name, name_of(index_.lab(), card->segment));
  return say(text::reach_not_plugged, here(), its_name);
}

// Beyond the routers nobody knows the lab's addresses.
Message Explainer::lost_outside() const {
  if (end_.back && q_.from.kind == Kind::machine)
    return say(text::reach_answer_lost, here(), to_text(end_.address));
  const AnyId sender = end_.back ? q_.to : q_.from;
  const ReachAddress* h = holder();
  if (sender.kind == Kind::pc && h && n_.ports()[h->port].segment != kNowhere)
    return say(text::reach_no_socket, name(sender), segment(h->port), to_text(end_.address));
  if (auto m = behind_translator()) return *m;
  if (sender.kind == Kind::machine || sender.kind == Kind::pc)
    return say(text::reach_sent_out, here(), to_text(end_.address), name(sender));
  return say(text::reach_no_way_in, here(), to_text(end_.address));
}

Message Explainer::refused() const {
  const ReachAddress* h = holder();
  if (!h) return say(text::reach_refused, here(), address());
  return say(text::reach_refused_of, here(), address(), name(n_.nodes()[n_.ports()[h->port].node].id));
}

Message Explainer::nobody() const {
  const std::uint32_t at = port();
  const ReachAddress* h = holder();
  if (auto m = misplaced()) return *m;
  if (is_beyond(at)) return lost_outside();
  if (!h) return say(text::reach_nobody, here(), address(), segment(at));
  const AnyId other = n_.nodes()[n_.ports()[h->port].node].id;
  if (!n_.nodes()[n_.ports()[h->port].node].on) return say(text::reach_holder_off, here(), name(other));
  if (other == end_.node) return say(text::reach_nobody, here(), address(), segment(at));
  if (auto m = island(at)) return *m;
  if (auto m = island(h->port)) return *m;
  if (n_.ports()[h->port].piece == kNowhere)
    return say(text::reach_holder_out, name(other), address(), name_of(index_.lab(), n_.ports()[h->port].id));
  if (segment(at) == segment(h->port)) return unheard();
  return say(text::reach_elsewhere, here(), address(), segment(at), name(other), segment(h->port));
}

Message Explainer::between(const Template& t) const {
  const ReachAddress* h = holder();
  return say(t, here(), h ? name(n_.nodes()[n_.ports()[h->port].node].id) : address());
}

Message Explainer::message() const {
  const bool on_the_way = end_.what >= Decision::nobody && end_.what != Decision::not_offered;
  if (on_the_way || end_.what == Decision::no_route)
    if (auto m = cut()) return *m;
  switch (end_.what) {
  case Decision::is_off:
    return say(text::reach_off, here());
  case Decision::no_source:
    return no_source();
  case Decision::no_route:
    return no_route();
  case Decision::refuses:
    return refused();
  case Decision::not_plugged:
    return not_plugged();
  case Decision::nobody:
    return nobody();
  case Decision::unheard:
    return unheard();
  case Decision::ignores:
    return say(text::reach_ignores, here(), address());
  case Decision::other_macs:
    return other_macs();
  case Decision::separated:
    return between(text::reach_separated);
  case Decision::same_mac:
    return between(text::reach_same_mac);
  case Decision::too_big:
    return between(text::reach_too_big);
  case Decision::must_fragment:
    return say(text::reach_must_fragment, here());
  case Decision::does_not_forward:
    return say(text::reach_no_forwarding, here(), address());
  case Decision::reverse_path:
    return say(text::reach_reverse_path, here(), address());
  case Decision::own_source:
    return say(text::reach_own_source, here(), address());
  case Decision::hop_limit:
    return say(text::reach_hop_limit, here(), address());
  case Decision::link_scope:
    return say(text::reach_link_scope, here(), address());
  case Decision::someone_else:
    return say(text::reach_someone_else, here(), address());
  case Decision::other_source:
    return say(text::reach_other_source, here(), address());
  case Decision::not_offered:
    return say(text::reach_not_offered, here());
  default:
    return say(text::reach_unknown, here());
  }
}

namespace {

// Packets arrive, but some systems do not answer a ping as they come (MODEL, Reach).
const Template& ok_words(const Index& index, const ReachQuestion& q) {
  const Machine* m = q.to.kind == Kind::machine ? index.machine(MachineId{q.to.number}) : nullptr;
  const Role* role = m && q.transport == Transport::icmp && !q.full_size ? index.role(m->role) : nullptr;
  return role && role->answers_ping == Known::no ? text::reach_ok_silent : text::reach_ok;
}

// By a port forward; the router before the PC is no part of the plan.
std::optional<Message> by_forward(const Lab& lab, const ReachQuestion& q, const ReachAnswer& a) {
  const ReachStep* by = nullptr;
  std::string router;
  for (const ReachStep& s : a.steps) {
    if (s.what != Decision::redirects) continue;
    by = &s;
    if (s.node.kind == Kind::lan) router = reach_name(lab, s.node);
  }
  if (!by) return std::nullopt;
  const std::string from = reach_name(lab, q.from), to = reach_name(lab, q.to),
                    port = std::to_string(by->service);
  return router.empty() ? say(text::reach_forwarded, from, to, port)
                        : say(text::reach_forwarded_twice, from, to, port, router);
}

} // namespace

Message explain(const Index& index, const Reach& reach, const ReachQuestion& q, const ReachAnswer& a) {
  const std::string from = named(index, q.from), to = named(index, q.to);
  if (a.verdict == Reached::reaches)
    if (auto m = by_forward(index.lab(), q, a)) return *m;
  if (a.verdict == Reached::reaches && q.to.kind == Kind::outside) return say(text::reach_outside, from, to);
  if (a.verdict == Reached::reaches) return say(ok_words(index, q), from, to, to_text(*a.target));
  if (a.verdict == Reached::unreliable && a.unsure) return say(text::reach_unsure, to_text(*a.unsure), from);
  if (a.verdict == Reached::unreliable) return say(text::reach_lease, from, to);
  if (!a.end) return say(text::reach_unknown, reach.network().node_of(q.from) == kNowhere ? from : to);
  return Explainer(index, reach, q, a).message();
}

} // namespace snug
