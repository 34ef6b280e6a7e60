#pragma once
// Who is a segment's gateway, and who serves DHCP there, under the hand. Each function gives one edit or
// refuses with a sentence for the pointer.

#include "core/addressing/in_use.h"
#include "core/edit/build.h"

namespace snug {

enum class Duty : std::uint8_t { gateway, dhcp };

// The card that has it; none: nobody, or a translator or a LAN's router.
CardId holder_of(const Index&, const AddressesInUse&, Duty, SegmentId);

// To a card on the segment that has a fixed address there. As gateway it passes packets on from then on, and
// default routes by the gateway before go by the new one. As DHCP server it takes over what the server before
// (a card's or the translator) gives out there, else the scheme's range.
Result<Edit> give_duty(const Lab&, Duty, SegmentId, CardId);
// To a machine's card there; it gets one where it has none.
Result<Edit> give_duty(const Lab&, Duty, SegmentId, MachineId);
// From whoever has it; a NAT segment's gateway is then its translator. Empty when nobody has it.
Edit take_duty(const Lab&, Duty, SegmentId);

// What an edit has done: the gateway's address and how many routes follow, or the ranges that are given out.
std::vector<Message> duty_says(const Lab& before, const Lab& after, Duty, SegmentId);

} // namespace snug
