#pragma once
// What the rules about networks, addresses and names share.

#include "core/findings/tools.h"

namespace snug {

inline constexpr std::string_view kPracticeSource = "common practice, no published source";

// Card, PC, segment (its translator) or LAN (its router).
AnyId holder_id(const Context&, const HeldAddress&);
// "deck-a", "deck-a card 2" when it has several; "the PC", "the translator of Crew", "house router".
Argument holder_name(const Context&, const HeldAddress&);
std::string card_name(const Context&, std::uint32_t card_place);
// The card of a machine that would carry a segment if it were connected, as its place; kNowhere.
std::uint32_t cut_carrier(const Context&, std::uint32_t machine_place, SegmentId);
// Name of the machine of a card.
std::string machine_name(const Context&, std::uint32_t card_place);
std::string segment_name(const Context&, std::uint32_t segment_place);
// ".32" on a segment of /24 to /30, else the whole address; IPv6: the whole.
std::string short_address(const Address&, const std::optional<Prefix>&);
std::string range_text(const AddressRange&);

// First not above last, of one family.
bool is_formed(const RangeRow&);
// The range that was meant: the other way round, or one address where no last one was written. None where
// the families differ.
std::optional<RangeRow> formed(const RangeRow&);

// Drops findings that repeat an earlier one with the same places, from the one at `first` on.
void drop_repeated(std::vector<Finding>& out, std::size_t first);

// The steps that turn `before` into `after`, two states of one element or singleton.
template <typename E>
Fix change_to(Message label, AnyId id, const E& before, const E& after) {
  Fix fix{label, {label, {}}};
  for (const FieldInfo& f : info<E>().fields)
    if (!f.equal(&before, &after))
      fix.edit.steps.emplace_back(SetField{id, &f, f.get(&before), f.get(&after)});
  return fix;
}
template <typename E>
Fix change_to(Message label, const E& before, const E& after) {
  return change_to(std::move(label), AnyId(before.id), before, after);
}

// Moves one address row of a card to the next free address of its segment. `held` is a card's.
std::optional<Fix> move_address(const Context&, const HeldAddress& held);
// Moves every row of a card that `is_wrong` to a free address; nothing when none is wrong or one finds no
// place.
template <typename IsWrong>
std::optional<Fix> move_first(const Context& c, AnyId card, IsWrong is_wrong) {
  const std::uint32_t place = c.index.place(card);
  for (const HeldAddress& h : c.addresses.all())
    if (h.card == place && place != kNowhere && is_wrong(h)) return move_address(c, h);
  return std::nullopt;
}

} // namespace snug
