#include "core/findings/twice_fixes.h"

#include "core/findings/network_tools.h"
#include "core/reach/promises.h"
#include "core/text/address_text.h"

#include <algorithm>

namespace snug {

namespace {

struct Pair {
  HeldAddress first, second; // the first is a card's
};

// Whether both are one row of one card.
bool is_one(const HeldAddress& a, const HeldAddress& b) {
  return a.holder == b.holder && a.card == b.card && a.row == b.row && a.segment == b.segment;
}

std::optional<Pair> pair_of(const Context& c, const Finding& f) {
  const std::uint32_t a = c.index.place(f.places[0]);
  if (f.places[0].kind != Kind::card) return std::nullopt;
  std::optional<Pair> pair;
  for (const HeldAddress& h : c.addresses.all()) {
    if (h.card != a || h.holder != Holder::card || h.segment == kNowhere) continue;
    for (const HeldAddress& o : c.addresses.with(h.segment, h.address))
      if (!is_one(o, h) && o.domain == h.domain && holder_id(c, o) == f.places.back()) pair = {h, o};
  }
  if (pair) return pair;
  for (const HeldAddress& h : c.addresses.all()) { // on two segments that are one network outside
    if (h.card != a || h.holder != Holder::card || h.segment == kNowhere) continue;
    for (const HeldAddress& o : c.addresses.all())
      if (!is_one(o, h) && o.address == h.address && o.domain == h.domain &&
          holder_id(c, o) == f.places.back())
        pair = {h, o};
  }
  return pair;
}

// Whether packets for others are sent to the address, and this card passes them on.
bool is_way(const Context& c, const HeldAddress& h) {
  const Card& card = c.lab.cards[h.card];
  if (!(h.address.is_v4() ? card.forwards4 : card.forwards6)) return false;
  if (c.addresses.gateway4(h.segment) == h.address || c.addresses.gateway6(h.segment) == h.address)
    return true;
  return std::any_of(c.lab.machines.begin(), c.lab.machines.end(), [&](const Machine& m) {
    return std::any_of(m.routes.begin(), m.routes.end(), [&](const Route& r) { return r.via == h.address; });
  });
}

bool is_promised(const Context& c, MachineId id) {
  return std::any_of(c.lab.promises.begin(), c.lab.promises.end(),
                     [id](const Promise& p) { return p.from == AnyId(id) || p.to == AnyId(id); });
}

// Whether another machine takes a service from it: it is named, or it is one of those that offer it.
bool is_needed(const Context& c, std::uint32_t machine) {
  const MachineId id = c.lab.machines[machine].id;
  Offerings offerings(c.index);
  bool needed = false;
  c.addresses.facts().each_machine(MachineMark::needs, [&](std::uint32_t m) {
    if (needed || m == machine) return;
    for (const Need& n : needs_of(c.index, m)) {
      const auto& offers = offerings.of(n.service);
      needed |= n.from ? n.from == id : std::find(offers.begin(), offers.end(), machine) != offers.end();
    }
  });
  return needed;
}

bool is_asked_for(const Context& c, const HeldAddress& h) {
  const std::uint32_t machine = c.index.machine_of_card(h.card);
  return machine != kNowhere && (is_promised(c, c.lab.machines[machine].id) || is_needed(c, machine));
}

// Whether the machine's other cards share another last octet: one octet for one machine is the custom.
bool is_out_of_step(const Context& c, const HeldAddress& h) {
  constexpr std::uint64_t kOctet = 0xff;
  const std::uint32_t machine = c.index.machine_of_card(h.card);
  if (machine == kNowhere || !h.address.is_v4()) return false;
  bool others = false;
  for (const std::uint32_t card : c.index.cards_of(machine))
    for (const CardAddress& a : c.lab.cards[card].addresses) {
      if (card == h.card || !a.address || !a.address->is_v4()) continue;
      if ((a.address->low() & kOctet) == (h.address.low() & kOctet)) return false;
      others = true;
    }
  return others;
}

bool first_moves(const Context& c, const Pair& p) {
  const bool a = p.first.kind == AddressKind::suggested, b = p.second.kind == AddressKind::suggested;
  if (a != b) return a;
  for (const auto& [of, stays] : {std::pair{&is_way, true}, {&is_out_of_step, false}, {&is_asked_for, true}})
    if (const bool first = of(c, p.first); first != of(c, p.second)) return first != stays;
  return false;
}

std::optional<Fix> move(const Context& c, const HeldAddress& h) {
  auto fix = move_address(c, h);
  if (fix)
    fix->label = fix->edit.label = say(text::fix_move_to_address, fix->label.args[1], fix->label.args[0]);
  return fix;
}

} // namespace

std::optional<Fix> fix_twice(const Context& c, const Finding& f) {
  const auto pair = pair_of(c, f);
  if (!pair) return std::nullopt;
  if (pair->second.holder != Holder::card) return move(c, pair->first);
  return move(c, first_moves(c, *pair) ? pair->first : pair->second);
}

std::optional<Fix> other_fix_twice(const Context& c, const Finding& f) {
  const auto pair = pair_of(c, f);
  if (!pair || pair->second.holder != Holder::card || f.places.size() < 2) return std::nullopt;
  return move(c, first_moves(c, *pair) ? pair->second : pair->first);
}

} // namespace snug
