#pragma once
// What is free on a segment, as a person reads it: runs of addresses.

#include "core/addressing/in_use.h"

namespace snug {

// Runs of IPv4 addresses of a segment that are free for a fixed address (as Room says), in order, at most so
// many; nothing without a prefix.
std::vector<AddressRange> free_spans(const Index&, const AddressesInUse&, std::uint32_t segment_place,
                                     std::size_t most);

} // namespace snug
