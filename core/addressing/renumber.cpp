#include "core/addressing/renumber.h"

#include "core/addressing/prefix_plan.h"

#include <algorithm>

namespace snug {

namespace {

class Mover {
 public:
  Mover(const Prefix& from, const Prefix& to) : from_(from), to_(to) {}
  void move(Address& a) const {
    if (!from_.contains(a)) return;
    a = Address::of(a.family(), to_.network().value() + (a.value() - from_.network().value()));
  }
  void move(std::optional<Address>& a) const {
    if (a) move(*a);
  }
  void move(std::vector<RangeRow>& rows) const {
    for (RangeRow& r : rows) {
      move(r.first);
      move(r.last);
    }
  }

 private:
  Prefix from_, to_;
};

bool is_only_prefix(const Lab& lab, std::uint32_t segment_place, const Prefix& p) {
  for (std::uint32_t s = 0; s < lab.segments.size(); ++s)
    if (s != segment_place && (lab.segments[s].prefix4 == p || lab.segments[s].prefix6 == p)) return false;
  return true;
}

void move_routes(Lab& lab, const AddressesInUse& in_use, std::uint32_t segment_place, const Mover& mover,
                 std::pair<Prefix, Prefix> from_to) {
  std::vector<bool> is_here(lab.machines.size(), false);
  const NetworkFacts& facts = in_use.facts();
  for (std::uint32_t c = 0; c < facts.card_machine.size(); ++c)
    if (facts.card_machine[c] != kNowhere && is_on(lab.cards[c], lab.segments[segment_place].id))
      is_here[facts.card_machine[c]] = true;
  const bool only = is_only_prefix(lab, segment_place, from_to.first);
  for (std::uint32_t m = 0; m < lab.machines.size(); ++m)
    for (Route& r : lab.machines[m].routes) {
      if (only && r.to == from_to.first) r.to = from_to.second;
      if (is_here[m]) mover.move(r.via);
    }
}

} // namespace

std::optional<Prefix> other_prefix(const Lab& lab, std::uint32_t segment_place, Family family) {
  const Segment& s = lab.segments[segment_place];
  const auto& now = family == Family::v4 ? s.prefix4 : s.prefix6;
  if (!now || now->family() != family) return std::nullopt;
  const std::vector<Prefix> taken = prefixes_in_the_way(lab);
  const auto& block = family == Family::v4 ? lab.numbering.block : lab.facts.local_prefix6;
  if (block && block->family() == family)
    if (const auto p = lowest_free(*block, now->length(), taken)) return p;
  if (family == Family::v6) return std::nullopt;
  const auto suggested = suggested_block(taken);
  return suggested ? lowest_free(*suggested, now->length(), taken) : std::nullopt;
}

void renumber(Lab& lab, const Index& index, const AddressesInUse& in_use, std::uint32_t segment_place,
              const Prefix& to) {
  Segment& s = lab.segments[segment_place];
  const std::optional<Prefix> from = in_use.prefix(segment_place, to.family());
  if (!from || from->length() != to.length()) return;
  const Mover mover(*from, to);
  (to.is_v4() ? s.prefix4 : s.prefix6) = to;
  for (std::optional<Address>* a : {&s.gateway4, &s.gateway6, &s.pc_address4, &s.pc_address6, &s.translator4})
    mover.move(*a);
  mover.move(s.ranges);
  mover.move(s.kept);
  for (const HeldAddress& h : in_use.on(segment_place))
    if (h.holder == Holder::card) mover.move(lab.cards[h.card].addresses[h.row].address);
  in_use.facts().each_card(CardMark::server | CardMark::has_ranges, [&](std::uint32_t c) {
    if (in_use.segment_for(index, c, index.lab().cards[c].ranges.front().first) == segment_place)
      mover.move(lab.cards[c].ranges);
  });
  move_routes(lab, in_use, segment_place, mover, {*from, to});
}

} // namespace snug
