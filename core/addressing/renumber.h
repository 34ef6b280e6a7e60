#pragma once
// Moving a segment to another prefix.

#include "core/addressing/in_use.h"

namespace snug {

// A free prefix as long as the segment's of that family, from the numbering scheme's block (IPv6: the lab's
// RFC 4193 prefix), else from a suggested block; nothing when there is none or the segment has no prefix.
std::optional<Prefix> other_prefix(const Lab&, std::uint32_t segment_place, Family);

// Moves a segment's prefix and everything that lies in it and belongs to the segment, host numbers kept:
// addresses, gateway, translator, PC socket, ranges, kept ranges, and machines' routes by it and to it. `lab`
// is the one that the index is made of, or a copy of it; `to` is as long as the present prefix.
void renumber(Lab& lab, const Index&, const AddressesInUse&, std::uint32_t segment_place, const Prefix& to);

} // namespace snug
