#pragma once
// What a hypervisor's card carries to the guests inside, under the hand.

#include "core/analyse/analyse.h"
#include "core/edit/build.h"

namespace snug {

// The pin of a card for this segment is hollow: it carries it and has no address there.
bool is_hollow(const Card&, SegmentId);
// Carries a segment beside what it does already: with the VLAN id that the segment has, or that other cards
// use for it; none where it is the card's only segment without one, else the next free multiple of ten.
// Refuses cards of machines that are no hypervisors, and what it carries already.
Result<Edit> carry(const Lab&, CardId, SegmentId);
// No longer; a card that is there for nothing else is then not plugged. Refuses what it does not carry.
Result<Edit> carry_no_more(const Lab&, CardId, SegmentId);
// Who of its guests then reaches whom on the segment, or no longer reaches anybody outside.
std::vector<Message> carriage_says(const Analysis& now, const Analysis& then, CardId, SegmentId);

} // namespace snug
