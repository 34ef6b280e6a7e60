#pragma once
// Words of the outline.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template tab_parts{"tab-parts", "Parts"};
inline constexpr Template tab_outline{"tab-outline", "Outline"};
inline constexpr Template act_outline{"act-outline", "&Outline"};
inline constexpr Template act_parts{"act-parts", "&Parts"};
inline constexpr Template outline_name{"outline-name", "The lab as a tree"};
inline constexpr Template outline_column_name{"outline-column-name", "Name"};
inline constexpr Template outline_column_detail{"outline-column-detail", "Size or address"};
inline constexpr Template outline_segments{"outline-segments", "Segments"};
inline constexpr Template outline_outside{"outline-outside", "Outside this PC"};
inline constexpr Template outline_volumes{"outline-volumes", "Volumes of the PC"};
inline constexpr Template outline_exercises{"outline-exercises", "Exercises"};
inline constexpr Template outline_card{"outline-card", "card {0}"};
inline constexpr Template outline_disk{"outline-disk", "disk {0}"};
inline constexpr Template outline_of{"outline-of", "{0} · {1}"};
inline constexpr Template outline_off{"outline-off", "{0} · off"};
inline constexpr Template outline_dhcp{"outline-dhcp", "DHCP"};
inline constexpr Template outline_slaac{"outline-slaac", "SLAAC"};
inline constexpr Template outline_carries{"outline-carries", "carries"};
inline constexpr Template outline_no_address{"outline-no-address", "no address"};
inline constexpr Template outline_help{
    "outline-help",
    "Drag a machine onto a hypervisor, the PC or a segment, or a card onto a segment. F2 or a "
    "double click changes a name, an address or a size."};

} // namespace snug::text
