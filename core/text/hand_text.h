#pragma once
// What hands do on segments: what cards carry, who has a duty there, the order of rows.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template hand_carry{"hand-carry", "Let {0} carry {1}"};
inline constexpr Template hand_carry_no_more{"hand-carry-no-more", "Let {0} no longer carry {1}"};
inline constexpr Template hand_carries{"hand-carries", "{0} carries {1} already"};
inline constexpr Template hand_carries_not{"hand-carries-not", "{0} does not carry {1}"};
inline constexpr Template hand_no_guests{
    "hand-no-guests", "{0} is no hypervisor: nothing inside that its card could carry a segment to"};
inline constexpr Template hand_carriage{"hand-carriage", "What {0} carries"};
inline constexpr Template hand_with_vlan{"hand-with-vlan", "{0} has VLAN id {1} on this card"};
// {0}: guests; {1}: a segment; {2}: who else is on it.
inline constexpr Template hand_reaches{"hand-reaches", "on {1}, {0} can then talk to {2}"};
inline constexpr Template hand_joins{"hand-joins", "on {1}, nobody is there yet for {0} to talk to"};
inline constexpr Template hand_alone{"hand-alone", "on {1}, {0} can then talk to nobody outside {2}"};
inline constexpr Template hand_nobody{"hand-nobody", "no guest inside {0} has a card on {1} yet"};
inline constexpr Template hand_hollow_help{
    "hand-hollow-help",
    "Pull to a rail: it carries that one as well. With Shift: instead. Off the rails: no more"};
inline constexpr Template hand_pin_help{
    "hand-pin-help", "Drag to another rail: the card moves there. With Shift: it carries that "
                     "rail to the guests inside"};
inline constexpr Template hand_disk_along{"hand-disk-along", "{0} goes along, onto {1}"};
inline constexpr Template hand_disks_along{"hand-disks-along", "{0} disks go along, onto {1}"};
inline constexpr Template hand_gets_card{"hand-gets-card", "gets a card on {0}: {1}"};
inline constexpr Template hand_gets_bare_card{"hand-gets-bare-card", "gets a card on {0}"};
inline constexpr Template hand_gateway{"hand-gateway", "Make {0} the gateway of {1}"};
inline constexpr Template hand_dhcp{"hand-dhcp", "Let {0} serve DHCP on {1}"};
inline constexpr Template hand_no_gateway{"hand-no-gateway", "Leave {0} without gateway"};
inline constexpr Template hand_no_dhcp{"hand-no-dhcp", "Leave {0} without DHCP server"};
inline constexpr Template hand_is_gateway{"hand-is-gateway", "{0} is the gateway of {1} already"};
inline constexpr Template hand_is_dhcp{"hand-is-dhcp", "{0} serves DHCP on {1} already"};
inline constexpr Template hand_no_address{"hand-no-address",
                                          "{0} has no fixed address on {1}: give it one first"};
inline constexpr Template hand_not_plugged{"hand-not-plugged", "{0} is not plugged into {1}"};
inline constexpr Template hand_no_range{
    "hand-no-range", "{0} has no room for a DHCP range: give it a prefix, or free numbers in it"};
inline constexpr Template hand_gives_out{"hand-gives-out", "gives out {0} to {1}"};
inline constexpr Template hand_gateway_is{"hand-gateway-is", "{0} is then the way out of {1}"};
inline constexpr Template hand_routes_follow{"hand-routes-follow", "default routes of {0} machines follow",
                                             "the default route of {0} machine follows"};
inline constexpr Template hand_slot_gateway{"hand-slot-gateway", "gateway"};
inline constexpr Template hand_slot_dhcp{"hand-slot-dhcp", "DHCP server"};
inline constexpr Template hand_duty_of{"hand-duty-of", "{0} of {1}"};
inline constexpr Template hand_duty_help{"hand-duty-help",
                                         "{0} of {1}: drag to another card there, or off the rails"};
inline constexpr Template hand_band_moved{"hand-band-moved", "Move the row of {0}"};
inline constexpr Template hand_band_own{"hand-band-own", "Give {0} a row of their own"};
inline constexpr Template hand_band_help{
    "hand-band-help",
    "Drag the row up or down. A click chooses its machines; Alt and arrow keys then move them"};
inline constexpr Template hand_band{"hand-band", "Row {0}"};
inline constexpr Template act_own_row{"act-own-row", "In a ro&w of their own"};
inline constexpr Template act_gateway{"act-gateway", "&Gateway of its segment"};
inline constexpr Template act_dhcp{"act-dhcp", "DHCP ser&ver of its segment"};
inline constexpr Template menu_carry{"menu-carry", "Carr&ies for its guests"};

} // namespace snug::text
