#include "core/findings/reach_fixes.h"

#include "core/findings/network_tools.h"
#include "core/text/promise_text.h"
#include "core/text/segment_text.h"

#include <algorithm>

namespace snug {

namespace {

// The gateways of the segments a machine has a card on, without its own addresses.
std::vector<Address> gateways(const Context& c, std::uint32_t machine, Family family) {
  std::vector<Address> out;
  for (const std::uint32_t card : c.index.cards_of(machine)) {
    const std::uint32_t s = c.index.segment_of_card(card);
    if (s == kNowhere || !c.lab.cards[card].connected) continue;
    const auto gateway = family == Family::v4 ? c.addresses.gateway4(s) : c.addresses.gateway6(s);
    if (!gateway || std::find(out.begin(), out.end(), *gateway) != out.end()) continue;
    const auto holders = c.addresses.with(s, *gateway);
    const bool own = std::any_of(holders.begin(), holders.end(), [&](const HeldAddress& h) {
      return h.holder == Holder::card && c.index.machine_of_card(h.card) == machine;
    });
    if (!own) out.push_back(*gateway);
  }
  return out;
}

std::optional<Fix> add_default(const Context& c, std::uint32_t machine, Family family) {
  const std::vector<Address> found = gateways(c, machine, family);
  if (found.size() != 1) return std::nullopt; // none, or a choice that a person must make
  const Machine& before = c.lab.machines[machine];
  Machine after = before;
  Route& r = after.routes.emplace_back();
  r.to = family == Family::v4 ? Prefix() : Prefix::of(Address::v6(0, 0), 0);
  r.via = found.front();
  return change_to(say(text::fix_default_route, c.name(before.id), to_text(found.front())), before, after);
}

std::optional<Fix> let_forward(const Context& c, std::uint32_t machine, Family family) {
  const AnyId id = c.lab.machines[machine].id;
  return build_fix(c, say(text::fix_forward, c.name(id)), [&](EditBuilder& b) {
    for (const std::uint32_t place : c.index.cards_of(machine)) {
      const Card& card = c.lab.cards[place];
      if (!(family == Family::v4 ? card.forwards4 : card.forwards6))
        b.set(card.id, family == Family::v4 ? "forwards4" : "forwards6", true);
    }
  });
}

// The first card of an end that is out of a segment: of the one where the other end is, or the one that
// sends.
std::optional<Fix> connect(const Context& c, AnyId end, AnyId other, const ReachAnswer& answer) {
  const auto is_on = [&](AnyId id, SegmentId s) {
    const std::uint32_t place = id.kind == Kind::machine ? c.index.place(id) : kNowhere;
    if (place == kNowhere) return false;
    const auto cards = c.index.cards_of(place);
    return std::any_of(cards.begin(), cards.end(),
                       [&](std::uint32_t p) { return c.lab.cards[p].segment == s; });
  };
  const std::uint32_t machine = end.kind == Kind::machine ? c.index.place(end) : kNowhere;
  if (machine == kNowhere) return std::nullopt;
  for (const std::uint32_t place : c.index.cards_of(machine)) {
    const Card& card = c.lab.cards[place];
    if (card.connected || !card.segment) continue;
    const bool is_meant =
        std::any_of(card.addresses.begin(), card.addresses.end(),
                    [&](const CardAddress& a) { return a.address && a.address == answer.target; });
    const bool sends = answer.end->what == Decision::not_plugged && answer.end->card == AnyId(card.id);
    if (!is_meant && !sends && !is_on(other, card.segment)) continue;
    return set_one(c, say(text::fix_connect, c.name(card.id), c.name(card.segment)), card.id, "connected",
                   true);
  }
  return std::nullopt;
}

// The uplink of a hypervisor around one of the two, without a cable.
std::optional<Fix> connect_uplink(const Context& c, AnyId end, const ReachStep& step) {
  const Card* sender = step.card.kind == Kind::card ? c.index.card(CardId{step.card.number}) : nullptr;
  if (!sender || !sender->segment || end.kind != Kind::machine) return std::nullopt;
  for (std::uint32_t m = c.index.place(end); m != kNowhere; m = c.index.carrier_of(m)) {
    const std::uint32_t cut = cut_carrier(c, m, sender->segment);
    if (cut == kNowhere) continue;
    return set_one(c, say(text::fix_connect, c.name(c.lab.cards[cut].id), c.name(sender->segment)),
                   c.lab.cards[cut].id, "connected", true);
  }
  return std::nullopt;
}

bool holds(const Finding& f, std::size_t occasion) {
  return occasion == 0 ? f.when.everything_on : f.when.exercises[occasion - 1];
}

} // namespace

std::optional<Fix> mend_way(const Context& c, const Judged& j) {
  if (!j.counts || j.kept || !j.answer.end) return std::nullopt;
  const ReachStep& end = *j.answer.end;
  if (auto fix = connect(c, j.question.from, j.question.to, j.answer)) return fix;
  if (auto fix = connect(c, j.question.to, j.question.from, j.answer)) return fix;
  if (end.what == Decision::nobody)
    for (const AnyId around : {end.node, j.question.from, j.question.to})
      if (auto fix = connect_uplink(c, around, end)) return fix;
  const std::uint32_t machine = end.node.kind == Kind::machine ? c.index.place(end.node) : kNowhere;
  if (machine == kNowhere) return std::nullopt;
  if (end.what == Decision::no_route) return add_default(c, machine, end.address.family());
  if (end.what == Decision::does_not_forward) return let_forward(c, machine, end.address.family());
  return std::nullopt;
}

std::optional<Fix> fix_promise(const Context& c, const Finding& f) {
  for (const Promise& p : c.lab.promises)
    for (std::size_t i = 0; f.places.front() == AnyId(p.id) && i < c.reach->occasions(); ++i)
      if (holds(f, i)) return mend_way(c, judge(c.reach->at(i), c.index, p));
  return std::nullopt;
}

std::optional<Fix> fix_need(const Context& c, const Finding& f) {
  const MachineId who = place_id<Kind::machine>(f);
  const std::uint32_t machine = c.index.place(who);
  Offerings offerings(c.index);
  for (std::size_t i = 0; machine != kNowhere && i < c.reach->occasions(); ++i) {
    if (!holds(f, i)) continue;
    for (const Need& n : needs_of(c.index, machine))
      if (const Judged j = judge(c.reach->at(i), c.index, offerings, who, n); j.question.to == f.places[1])
        if (auto fix = mend_way(c, j)) return fix;
  }
  return std::nullopt;
}

} // namespace snug
