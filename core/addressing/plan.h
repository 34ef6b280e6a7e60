#pragma once
// Address planning (MODEL, Addresses and names): from a numbering scheme or by need, always the same for the
// same lab, never moving what a person typed.

#include "core/addressing/room.h"
#include "core/edit/edit.h"

namespace snug {

struct PlanOptions {
  bool prefixes = true;     // give isolated and NAT segments without an IPv4 prefix one
  bool by_need = false;     // prefixes just large enough (VLSM), largest first; else the scheme's length
  bool addresses = true;    // fill empty cards and lay out suggested addresses anew
  bool ranges = true;       // DHCP ranges of servers that have none
  bool derived_macs = true; // of cards whose MAC is to be derived
  // Also /64 prefixes and addresses, from the lab's private prefix, which is made from its identity when
  // there is none (RFC 4193); always so when a segment has an IPv6 prefix.
  bool ipv6 = false;
};

// One edit that does all of it; empty when nothing is to do. Refuses with a sentence when a prefix or an
// address is wanted and none is left. A machine gets the same host number on all its segments where one is
// free on all of them: the number of its typed addresses first, then the one it was suggested before, then
// the lowest of the scheme's fixed range. Left alone: typed addresses, cards that only carry, cards without
// segment or whose segment has no prefix, bridged segments whose LAN's DHCP pool is not known. A card that
// forwards takes its segment's gateway place when nobody has it.
Result<Edit> suggest_addresses(const Lab&, const PlanOptions& = {});

// The address a machine would get on a segment now; nothing when there is no IPv4 prefix or no room.
std::optional<Address> next_free(const Index&, const AddressesInUse&, SegmentId, MachineId);
// An IPv6 address for it: the digits of the host number in hexadecimal's place (host 31 is ::31).
std::optional<Address> next_free6(const Index&, const AddressesInUse&, SegmentId, MachineId);
// The scheme's DHCP range on a segment, without what is held there; nothing when there is no room.
std::optional<AddressRange> scheme_range(const Index&, const AddressesInUse&, std::uint32_t segment_place);
// Whether a fixed address can be suggested there: there is an IPv4 prefix, and on a bridged segment it is
// known what the LAN's DHCP gives out.
bool can_suggest(const Index&, const AddressesInUse&, std::uint32_t segment_place);

} // namespace snug
