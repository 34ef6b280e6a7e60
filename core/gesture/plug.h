#pragma once
// Cards, rails and sockets under the hand, as edits.

#include "core/gesture/add.h"

namespace snug {

// A new card of a machine on a segment with the next free address, suggested (IPv4, and IPv6 where the
// segment has such a prefix); none where addresses cannot be suggested. An inner guest's carriers are left
// as they are: whether they carry the segment is a finding. A router's cards forward.
Result<Added> add_card(const Lab&, MachineId, SegmentId);
// The same for several, as one step.
Result<Added> add_cards(const Lab&, std::span<const MachineId>,
                        SegmentId); // one at least; the first one's card
// Moves a card to another segment: its addresses give way to suggested ones, its DHCP ranges go. Refuses a
// card with a trunk, and the segment it is on.
Result<Edit> plug_card(const Lab&, CardId, SegmentId);
// A card that only carries: carries `to` in place of `from`.
Result<Edit> carry_instead(const Lab&, CardId, SegmentId from, SegmentId to);
Edit set_socket(const Lab&, SegmentId, bool socket);
// The PC's socket from one segment (none: a new one) to another (none: it goes). Refuses a segment that has
// one.
Result<Edit> move_socket(const Lab&, SegmentId from, SegmentId to);

// Typed in place. Names are trimmed; refused when nothing is left.
Result<Edit> rename(const Lab&, AnyId, std::string_view name);
// The first address of a card's family as typed: "172.22.10.12", "172.22.10.12/24", ".12" (last octet in the
// segment's prefix), "dhcp", "auto" (SLAAC); empty takes it off. Refused with the reason.
Result<Edit> set_address(const Lab&, CardId, std::size_t row, std::string_view text);

} // namespace snug
