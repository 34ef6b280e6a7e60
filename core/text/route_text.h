#pragma once
// Sentences about routes and MAC addresses.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template default_missing{
    "default-missing", "{0} is on {1} and has no default route: it reaches only its own segments"};
inline constexpr Template default_missing_why{"default-missing-why",
                                              "A fixed address brings no way out with it, as DHCP would. "
                                              "Send everything else to {0}, or leave it so if "
                                              "it shall talk to its neighbours only."};
inline constexpr Template default_twice{"default-twice", "{0} has {1} default routes with the same metric"};
inline constexpr Template default_twice_why{
    "default-twice-why",
    "Which one it takes is up to its system. Keep one, or give the spare one a larger metric."};
inline constexpr Template fix_keep_default{"fix-keep-default", "Send {0} out by {1} only"};
inline constexpr Template route_outside{"route-outside",
                                        "{0} sends {1} to {2}, which is on none of its networks"};
inline constexpr Template route_outside_why{
    "route-outside-why",
    "A next hop must be a neighbour (or be marked as on link). The route will be refused."};
inline constexpr Template route_nobody{"route-nobody",
                                       "{0} sends {1} to {2}, an address that nobody on {3} has"};
inline constexpr Template route_nobody_why{"route-nobody-why", "Packets for {0} end at {1}."};
inline constexpr Template route_not_forwarding{"route-not-forwarding",
                                               "{0} sends {1} to {2}, which does not forward"};
inline constexpr Template route_not_forwarding_why{"route-not-forwarding-why",
                                                   "{0} drops every packet that is not for itself."};
inline constexpr Template everything_else{"everything-else", "everything else"};

inline constexpr Template mac_twice{"mac-twice", "{0} and {1} have the MAC {2} on one network"};
inline constexpr Template mac_twice_why{
    "mac-twice-why", "A switch delivers frames to whoever spoke last, so both lose packets."};
inline constexpr Template mac_group{"mac-group", "the MAC {0} of {1} is a group address"};
inline constexpr Template mac_zero{"mac-zero", "the MAC of {0} is all zeros"};
inline constexpr Template mac_group_why{
    "mac-group-why",
    "A card needs an individual address: the lowest bit of the first octet is 0 (IEEE 802)."};
inline constexpr Template mac_refused{
    "mac-refused", "{0} has the fixed MAC {1}, but the virtualization program allows none"};
inline constexpr Template mac_refused_why{
    "mac-refused-why", "The program chooses the MAC itself. Read it back after the machine is built."};
inline constexpr Template fix_derive_mac{"fix-derive-mac", "Use the MAC {0} for {1}"};
inline constexpr Template fix_program_mac{"fix-program-mac", "Let the program choose the MAC of {0}"};

} // namespace snug::text
