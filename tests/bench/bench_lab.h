#pragma once
// Labs to measure with: the same for the same size, about 2 % conflicts.

#include "core/model/lab.h"

#include <cstddef>

namespace snug::bench {

// `guests` machines in blocks of one hypervisor and nine inner guests, one segment a block; two cards with
// IPv4, IPv6 and MAC a machine, one disk each, four exercises.
Lab guest_lab(std::size_t guests);
// The same, and every inner guest needs names and time, which the first guest of its block offers.
Lab needing_lab(std::size_t guests);
// The same with 20 promises between machines of different segments; most are broken.
Lab promising_lab(std::size_t guests);
// `ranges` of which 90 % are addresses of cards, 5 % DHCP ranges and 5 % prefixes of segments.
Lab range_lab(std::size_t ranges);

} // namespace snug::bench
