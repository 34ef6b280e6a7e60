#pragma once
// Which prefixes segments get.

#include "core/model/index.h"
#include "core/net/subnets.h"

namespace snug {

// Prefixes that suggested blocks keep away from although no place of the lab names them: usual defaults of
// home routers, VPNs and programs that make networks of their own. Common practice, no published source.
std::span<const Prefix> usual_defaults();
// All that a new prefix must not overlap, sorted: segments' own, physical LANs' and places'.
std::vector<Prefix> prefixes_in_the_way(const Lab&);
// A /16 for the lab's segments that overlaps neither `in_the_way` nor the usual defaults; nothing when there
// is none.
std::optional<Prefix> suggested_block(std::span<const Prefix> in_the_way);

// IPv4 hosts that each segment needs, in the order of the lab: cards that want an address, a gateway of its
// own, translator and PC socket; at least 2.
std::vector<std::int64_t> hosts_needed(const Lab&);
// The number of a segment in the scheme: its own, else its place in the list, from 1.
std::int64_t number_in_scheme(const Lab&, std::size_t segment_place);

// Gives prefixes to isolated and NAT segments of `lab` that have none, from numbering.block (which is chosen
// and set when it is empty). Refuses when the block has no room.
Result<void> plan_prefixes4(Lab& lab, bool by_need);
// /64 of the lab's RFC 4193 prefix for isolated segments without an IPv6 prefix.
Result<void> plan_prefixes6(Lab& lab);

} // namespace snug
