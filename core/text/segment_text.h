#pragma once
// Sentences about segments, what they are bridged to, and gateways.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template slaac_prefix{"slaac-prefix",
                                       "cards on {0} make their own IPv6 addresses, but {1} is not a /64"};
inline constexpr Template slaac_prefix_why{
    "slaac-prefix-why", "Autoconfiguration joins a prefix of 64 bits and an interface identifier of 64 bits. "
                        "With another length the cards get no address."};

inline constexpr Template segment_no_prefix{"segment-no-prefix", "{0} has no prefix yet"};
inline constexpr Template segment_no_prefix_why{
    "segment-no-prefix-why", "Its cards cannot get addresses. Suggesting addresses gives it one."};
inline constexpr Template segment_empty{"segment-empty", "no card is on {0}"};
inline constexpr Template segment_empty_why{"segment-empty-why", "Plug a card in or remove the segment."};
inline constexpr Template segment_name_twice{"segment-name-twice", "two segments are named {0}"};
inline constexpr Template segment_name_twice_why{
    "segment-name-twice-why", "Sheets and tables cannot tell them apart. Give one of them another name."};
inline constexpr Template card_unplugged{"card-unplugged", "{0} is on no segment"};
inline constexpr Template card_unplugged_why{"card-unplugged-why", "Plug it into a segment or remove it."};

inline constexpr Template machine_no_card{"machine-no-card", "{0} machines have no card: {1}",
                                          "{0} machine has no card: {1}"};
inline constexpr Template machine_no_card_more{"machine-no-card-more",
                                               "{0} machines have no card, among them {1}"};
inline constexpr Template machine_no_card_why{
    "machine-no-card-why",
    "Nobody reaches a machine without one. Pull a card from it to a segment, if it is to talk to anybody."};
inline constexpr Template nat_reaches_lan{
    "nat-reaches-lan", "a guest on {0} still reaches everything on {1} and in any VPN of the PC"};
inline constexpr Template nat_reaches_lan_any{"nat-reaches-lan-any",
                                              "a guest on {0} still reaches every LAN and VPN of the PC"};
inline constexpr Template nat_reaches_lan_why{
    "nat-reaches-lan-why", "Translation hides the guests, it holds nothing back. Put machines that must not "
                           "get out on an isolated segment."};
inline constexpr Template nat_lan_bare{"nat-lan-bare",
                                       "{0} leaves through {1}, whose addresses the plan does not know"};
inline constexpr Template nat_lan_no_gateway{"nat-lan-no-gateway",
                                             "{0} leaves through {1}, whose gateway the plan does not know"};
inline constexpr Template nat_lan_why{
    "nat-lan-why", "In the plan nothing on {0} reaches the outside. Enter the prefix and the gateway of {1}; "
                   "they stand with the LANs of the PC."};
inline constexpr Template nat_ipv6{"nat-ipv6", "{0} is a NAT segment and has the IPv6 prefix {1}"};
inline constexpr Template nat_ipv6_why{
    "nat-ipv6-why", "The translator is for IPv4 only: IPv6 packets do not leave this segment."};
inline constexpr Template fix_drop_prefix6{"fix-drop-prefix6", "Take the IPv6 prefix from {0}"};
inline constexpr Template forward_twice{"forward-twice", "two port forwards of {0} use {1} port {2}"};
inline constexpr Template forward_twice_why{"forward-twice-why", "Only one of them can have it."};
inline constexpr Template forward_elsewhere{"forward-elsewhere",
                                            "a port forward of {0} leads to {1}, which has no address there"};
inline constexpr Template forward_elsewhere_why{
    "forward-elsewhere-why", "The translator reaches only machines with an address on its own segment."};

inline constexpr Template bridged_no_lan{"bridged-no-lan", "{0} is bridged, but to no LAN"};
inline constexpr Template fix_add_lan{"fix-add-lan", "Add a LAN and bridge {0} to it"};
inline constexpr Template bridged_no_lan_why{
    "bridged-no-lan-why", "Say which physical LAN it is one network with, or make it isolated or NAT."};
inline constexpr Template fix_bridge_to{"fix-bridge-to", "Bridge {0} to {1}"};
inline constexpr Template bridged_prefix{"bridged-prefix", "{0} has {1}, but its LAN {2} has {3}"};
inline constexpr Template bridged_prefix_why{
    "bridged-prefix-why", "A bridged segment is one network with its LAN and has the same prefix."};
inline constexpr Template fix_lan_prefix{"fix-lan-prefix", "Take the prefix of {0}"};
inline constexpr Template bridged_wireless{"bridged-wireless",
                                           "guests inside {0} do not reach {1}: {2} is wireless"};
inline constexpr Template bridged_wireless_why{
    "bridged-wireless-why", "A wireless station sends only with its own MAC, so frames of inner guests are "
                            "dropped. Use a cable or a NAT segment."};
inline constexpr Template bridged_wired{"bridged-wired",
                                        "{0} shows {1} more MAC addresses at the wall socket of {2}",
                                        "{0} shows one more MAC address at the wall socket of {2}"};
inline constexpr Template bridged_wired_why{
    "bridged-wired-why", "Port security of a switch may allow one or two and close the socket. At work, ask "
                         "the network's administrator before you bridge."};

inline constexpr Template gateway_outside{"gateway-outside", "the gateway {0} of {1} does not lie in {2}"};
inline constexpr Template gateway_outside_why{
    "gateway-outside-why", "Machines there find no way to it, so nothing leaves the segment."};
inline constexpr Template fix_gateway{"fix-gateway", "Make {0} ({1}) the gateway of {2}"};
inline constexpr Template gateway_nobody{"gateway-nobody", "nobody has {0}, the gateway of {1}"};
inline constexpr Template gateway_nobody_why{
    "gateway-nobody-why", "Packets that leave the segment are sent to an address that does not answer."};
inline constexpr Template gateway_not_forwarding{"gateway-not-forwarding",
                                                 "{0} is the gateway of {1} and does not forward"};
inline constexpr Template gateway_not_forwarding_why{
    "gateway-not-forwarding-why", "It drops every packet that is not for itself. Switch forwarding on."};
inline constexpr Template no_way_back{"no-way-back", "{0} sends on to {1} without translating"};
inline constexpr Template no_way_back_why{
    "no-way-back-why",
    "The translator of {1} knows no way to what is behind {0}, so no answer comes back from "
    "outside. Let {0} translate what leaves there."};
inline constexpr Template fix_translate{"fix-translate", "Let {0} translate on {1}"};
inline constexpr Template fix_forward{"fix-forward", "Let {0} forward"};
inline constexpr Template pc_is_gateway{"pc-is-gateway", "the PC has {0}, the place of the gateway of {1}"};
inline constexpr Template pc_is_gateway_why{
    "pc-is-gateway-why", "The PC does not forward between its sockets, so nothing leaves the segment. Keep "
                         "that place for a router."};
inline constexpr Template fix_move_pc{"fix-move-pc", "Use {0} for the PC on {1}"};

} // namespace snug::text
