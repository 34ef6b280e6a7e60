#include "core/reach/promises.h"

#include <algorithm>

namespace snug {

namespace {

template <typename Use>
void each_offer(const Index& index, std::uint32_t machine, std::string_view service, Use use) {
  const Machine& m = index.lab().machines[machine];
  for (const Offer& o : m.offers)
    if (o.service == service) use(o);
  if (const Role* role = index.role(m.role))
    for (const Offer& o : role->offers)
      if (o.service == service) use(o);
}

// A translator that relays names answers for any name server.
bool hears_relay(Reach& reach, const Index& index, std::uint32_t node) {
  const ReachNetwork& n = reach.network();
  for (std::uint32_t p = n.nodes()[node].first_port; p < n.nodes()[node].end_port; ++p) {
    const std::uint32_t s = n.ports()[p].segment;
    if (s == kNowhere) continue;
    const Segment& segment = index.lab().segments[s];
    if (segment.type != SegmentKind::nat || !segment.translator_names) continue;
    ReachQuestion q;
    q.from = n.nodes()[node].id;
    q.to = segment.id;
    if (reach.verdict(q) == Reached::reaches) return true;
  }
  return false;
}

} // namespace

std::vector<Need> needs_of(const Index& index, std::uint32_t machine) {
  const Machine& m = index.lab().machines[machine];
  std::vector<Need> out = m.needs;
  const Role* role = index.role(m.role);
  if (!role) return out;
  for (const Need& n : role->needs)
    if (std::none_of(m.needs.begin(), m.needs.end(),
                     [&](const Need& own) { return own.service == n.service; }))
      out.push_back(n);
  return out;
}

const std::vector<std::uint32_t>& Offerings::of(const std::string& service) {
  const auto [it, is_new] = known_.try_emplace(service);
  if (!is_new) return it->second;
  const Lab& lab = index_->lab();
  const auto is_in = [&](const std::vector<Offer>& offers) {
    return std::any_of(offers.begin(), offers.end(), [&](const Offer& o) { return o.service == service; });
  };
  std::vector<std::uint8_t> by_role;
  for (const Role& r : lab.roles) by_role.push_back(is_in(r.offers) ? 1 : 0);
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m) {
    const std::uint32_t role = index_->machines()[m].role;
    if ((role != kNowhere && by_role[role] != 0) || is_in(lab.machines[m].offers)) it->second.push_back(m);
  }
  return it->second;
}

Judged judge(Reach& reach, const Index& index, Offerings& offerings, MachineId who, const Need& need) {
  Judged result;
  const ReachNetwork& n = reach.network();
  const std::uint32_t from = n.node_of(who);
  if (from == kNowhere || !n.nodes()[from].on) return result;
  const std::vector<std::uint32_t> named{index.place(need.from)};
  const std::vector<std::uint32_t>& places = need.from ? named : offerings.of(need.service);
  for (const std::uint32_t place : places) {
    if (place == kNowhere) continue;
    ReachQuestion q;
    q.from = who;
    q.to = index.lab().machines[place].id;
    if (q.to == q.from) return {}; // it serves itself
    const auto ask = [&](const Offer& o) {
      if (result.counts && result.kept) return;
      q.transport = o.transport;
      q.port = o.port;
      ReachAnswer a = reach.ask(q);
      const bool kept = a.verdict == Reached::reaches;
      if (!result.counts || kept) result = {true, kept, q, std::move(a), true};
    };
    each_offer(index, place, need.service, ask);
    if (result.counts && result.kept) break;
  }
  if (result.counts && !result.kept && !need.from && need.service == "names" &&
      hears_relay(reach, index, from))
    result.kept = true;
  return result;
}

} // namespace snug
