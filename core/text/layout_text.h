#pragma once
// Words on the diagram.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template layout_outside{"layout-outside", "Outside this PC"};
inline constexpr Template layout_empty{"layout-empty", "Nothing runs on this PC yet"};
inline constexpr Template layout_invite{"layout-invite",
                                        "Drag a part from the left to here, or click the part and then here"};
inline constexpr Template layout_no_name{"layout-no-name", "no name"};
inline constexpr Template layout_no_role{"layout-no-role", "no role"};
inline constexpr Template layout_processors{"layout-processors", "{0} processors", "{0} processor"};
inline constexpr Template layout_cores{"layout-cores", "{0} cores", "{0} core"};
inline constexpr Template layout_threads{"layout-threads", "{0} threads", "{0} thread"};
inline constexpr Template layout_nested_on{"layout-nested-on", "nested virtualization on"};
inline constexpr Template layout_nested_off{"layout-nested-off", "nested virtualization off"};
inline constexpr Template layout_usable{"layout-usable", "{0} of {1} usable"};
inline constexpr Template layout_guests_take{"layout-guests-take", "guests take {0} of {1}"};
inline constexpr Template layout_room_for{"layout-room-for", "room for {0}"};
inline constexpr Template layout_over_by{"layout-over-by", "over by {0}"};
inline constexpr Template layout_no_room{"layout-no-room", "no room for a guest"};
inline constexpr Template layout_ruler{"layout-ruler", "Memory of this PC"};
inline constexpr Template layout_reserved{"layout-reserved", "this PC  {0}"};
inline constexpr Template layout_state_fits{"layout-state-fits", "running {0} of {1} · headroom {2}"};
inline constexpr Template layout_state_tight{"layout-state-tight",
                                             "running {0} of {1} · headroom {2} · tight"};
inline constexpr Template layout_state_over{"layout-state-over", "running {0} of {1} · over by {2}"};
// Of what is running: what its machines are expected to use.
inline constexpr Template layout_expected{"layout-expected", "expected use {0}"};
inline constexpr Template layout_expected_is{"layout-expected-is", "expected use {0} of {1}"};
inline constexpr Template layout_expected_swaps{
    "layout-expected-swaps",
    "expected use {0} of {1}: it runs until the guests use what they were given, then the PC swaps"};
inline constexpr Template ruler_block{"ruler-block", "{0}: {1} of memory, takes {2}"};
inline constexpr Template ruler_block_expected{
    "ruler-block-expected", "{0}: {1} of memory, takes {2}, of which {3} is expected to be used"};
inline constexpr Template layout_isolated{"layout-isolated", "isolated"};
inline constexpr Template layout_bridged{"layout-bridged", "bridged"};
inline constexpr Template layout_nat{"layout-nat", "NAT"};
inline constexpr Template layout_no_prefix{"layout-no-prefix", "no prefix"};
inline constexpr Template layout_mtu{"layout-mtu", "MTU {0}"};
inline constexpr Template layout_vlan{"layout-vlan", "VLAN {0}"};
inline constexpr Template layout_dhcp_by{"layout-dhcp-by", "DHCP by {0}"};
inline constexpr Template layout_dhcp{"layout-dhcp", "DHCP"};
inline constexpr Template layout_gateway{"layout-gateway", "gateway"};
inline constexpr Template layout_dhcp_server{"layout-dhcp-server", "DHCP server"};
inline constexpr Template layout_slaac{"layout-slaac", "SLAAC"};
inline constexpr Template layout_translator{"layout-translator", "translator {0}"};
inline constexpr Template layout_socket{"layout-socket", "PC {0}"};
inline constexpr Template layout_socket_bare{"layout-socket-bare", "PC"};
inline constexpr Template layout_more{"layout-more", "and {0} more"};
inline constexpr Template layout_unnamed_lan{"layout-unnamed-lan", "a network outside"};
inline constexpr Template layout_not_plugged{"layout-not-plugged", "not plugged"};
inline constexpr Template layout_wired{"layout-wired", "wired"};
inline constexpr Template layout_wireless{"layout-wireless", "wireless"};

// For those who hear the picture.
inline constexpr Template layout_describe{"layout-describe", "{0} machines, {1} segments on {2}",
                                          "{0} machine, {1} segments on {2}"};
inline constexpr Template layout_machine{"layout-machine", "{0} on {1}, {2}"};
inline constexpr Template layout_off{"layout-off", "off in this exercise"};
inline constexpr Template layout_held{"layout-held", "kept in place"};
inline constexpr Template layout_at{"layout-at", "{0}: {1}"};
inline constexpr Template layout_carries{"layout-carries", "carries {0}"};
inline constexpr Template layout_error{"layout-error", "Error: {0}"};
inline constexpr Template layout_caution{"layout-caution", "Caution: {0}"};
inline constexpr Template layout_note{"layout-note", "Note: {0}"};

// Legend and title block.
inline constexpr Template legend_isolated{"legend-isolated", "isolated: exists only inside the PC"};
inline constexpr Template legend_bridged{"legend-bridged", "bridged: one network with a LAN outside"};
inline constexpr Template legend_nat{"legend-nat", "NAT: one way out, translated"};
inline constexpr Template legend_riser{"legend-riser", "stretches of one segment"};
inline constexpr Template legend_socket{"legend-socket", "socket: the PC itself is on the segment"};
inline constexpr Template legend_card{"legend-card", "card with its address on the segment"};
inline constexpr Template legend_pattern{"legend-pattern", "each segment has a colour and a pattern"};
inline constexpr Template legend_trunk{"legend-trunk", "pins on one bar: one card on several segments"};
inline constexpr Template legend_hollow{"legend-hollow", "card that only carries its guests, no address"};
inline constexpr Template legend_square{"legend-square", "inner guest on the segment with this letter"};
inline constexpr Template legend_island{"legend-island", "inner guest whose segment ends in its hypervisor"};
inline constexpr Template legend_bar{"legend-bar", "memory expected to be used"};
inline constexpr Template legend_inner_bar{"legend-inner-bar", "inner budget that guests take"};
inline constexpr Template legend_power{"legend-power", "on, off in this exercise"};
inline constexpr Template legend_error{"legend-error", "error"};
inline constexpr Template legend_caution{"legend-caution", "caution"};
inline constexpr Template legend_note{"legend-note", "note"};
inline constexpr Template title_untitled{"title-untitled", "Lab without title"};
inline constexpr Template title_author{"title-author", "by {0}"};
inline constexpr Template title_exercise{"title-exercise", "Exercise: {0}"};
inline constexpr Template title_everything{"title-everything", "Everything on"};

// What another exercise takes: {1}, by {2}.
inline constexpr Template compare_less{"compare-less", "{0}: {1}, that is {2} less"};
inline constexpr Template compare_more{"compare-more", "{0}: {1}, that is {2} more"};
inline constexpr Template compare_same{"compare-same", "{0}: {1}, as much"};
inline constexpr Template tidy_edit{"tidy-edit", "Tidy"};

} // namespace snug::text
