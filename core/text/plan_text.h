#pragma once
// Sentences of address planning.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template fix_alike{"fix-alike", "Repair {0} findings", "Repair {0} finding"};
inline constexpr Template plan_label{"plan-label", "Suggest addresses"};
inline constexpr Template plan_no_block{
    "plan-no-block", "no private block is free beside the lab's places and LANs: enter a block in the "
                     "numbering scheme"};
inline constexpr Template plan_block_full{
    "plan-block-full", "{0} has no free /{1} network for {2}: choose a larger block in the numbering scheme "
                       "or a longer prefix length"};
inline constexpr Template plan_need_large{"plan-need-large",
                                          "{0} needs {1} addresses, more than any IPv4 network has"};
inline constexpr Template plan_block_family{
    "plan-block-family", "the block {0} of the numbering scheme is not IPv4: enter one like 172.22.0.0/16"};
inline constexpr Template plan_segment_full{
    "plan-segment-full", "{0} ({1}) has no free address for {2}: use a larger prefix or smaller DHCP ranges"};
inline constexpr Template plan_no_prefix6{
    "plan-no-prefix6", "the lab has no private IPv6 prefix: enter one under fd00::/8 in the lab's settings"};

} // namespace snug::text
