#pragma once
// Sentences about what hypervisors' cards carry, MAC addresses behind them, VLANs and MTU.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template hollow_address{"hollow-address",
                                         "{0} only carries its guests' traffic, yet has an address"};
inline constexpr Template hollow_address_why{
    "hollow-address-why", "A hypervisor needs addresses only for management, storage and migration. Say what "
                          "this one is for, or take it away."};
inline constexpr Template fix_for_management{"fix-for-management", "{0} is for management"};
inline constexpr Template fix_no_address{"fix-no-address", "Take the address from {0}"};

inline constexpr Template not_carried{"not-carried", "no card of {0} carries {2} to {1}"};
inline constexpr Template not_carried_why{
    "not-carried-why", "The guests on it reach each other and nobody else. Let a card of {0} carry {1}."};
inline constexpr Template carrier_cut{"carrier-cut",
                                      "the card of {0} that carries {2} to {1} is not connected"};
inline constexpr Template carrier_cut_why{
    "carrier-cut-why",
    "The guests on it reach each other and {0}, and nobody else. Connect the card to {1}."};
inline constexpr Template fix_carry{"fix-carry", "Let {0} carry {1}"};
inline constexpr Template fix_new_carrier{"fix-new-carrier", "Give {0} a card that carries {1}"};

inline constexpr Template carry_loop{"carry-loop", "two cards of {0} carry {1}"};
inline constexpr Template carry_loop_why{
    "carry-loop-why",
    "Frames go round for ever and the network stops. Let one of them carry it, or make both "
    "one uplink group."};
inline constexpr Template fix_one_carrier{"fix-one-carrier", "Let only {0} carry {1}"};

inline constexpr Template macs_unknown{"macs-unknown",
                                       "nobody looked whether {0} passes the MACs of guests inside {1}"};
inline constexpr Template macs_unknown_why{
    "macs-unknown-why",
    "Inner guests send with their own MAC, and many programs drop such frames. Look in the "
    "settings of the network for other MACs, forged transmissions or promiscuous mode, "
    "allow them, and say so at the segment."};
inline constexpr Template macs_not_passed{"macs-not-passed",
                                          "{0} does not pass the MACs of guests inside {1}"};
inline constexpr Template macs_not_passed_why{
    "macs-not-passed-why", "Frames of inner guests carry their own MAC and are dropped. Allow other MACs on "
                           "this network, or keep those guests off it."};
inline constexpr Template own_mac_only{"own-mac-only",
                                       "{0} sends only its own MAC, but carries guests' traffic"};
inline constexpr Template fix_pass_macs{"fix-pass-macs", "Let {0} pass other MACs"};

inline constexpr Template untagged_twice{"untagged-twice",
                                         "{0} has two segments without VLAN id: {1} and {2}"};
inline constexpr Template untagged_twice_why{
    "untagged-twice-why",
    "Frames without a VLAN id would belong to both, so the two become one network. Give "
    "one of them a VLAN id."};
inline constexpr Template vlan_twice{"vlan-twice", "{0} uses VLAN {1} for both {2} and {3}"};
inline constexpr Template vlan_twice_why{"vlan-twice-why",
                                         "The two become one network. Give one of them another VLAN id."};
inline constexpr Template vlan_differs{"vlan-differs",
                                       "{0} has {1} with VLAN {2}, but its id is {3} elsewhere"};
inline constexpr Template vlan_differs_why{
    "vlan-differs-why", "Frames sent with one id are not understood by a card that waits for the other."};
inline constexpr Template fix_use_vlan{"fix-use-vlan", "Use VLAN {0} for {1}"};

inline constexpr Template mtu_over{"mtu-over", "{0} sends frames of {1} octets, but {2} passes {3}"};
inline constexpr Template mtu_over_why{
    "mtu-over-why", "Small packets pass and full ones vanish: logins work, copying hangs."};
inline constexpr Template mtu_under{"mtu-under", "{0} takes frames of {1} octets, but {2} has {3}"};
inline constexpr Template mtu_under_why{
    "mtu-under-why", "All cards of a segment need one MTU; larger frames of the others never arrive here."};
inline constexpr Template fix_mtu{"fix-mtu", "Use {0} octets on {1}"};
inline constexpr Template mtu_ipv6{"mtu-ipv6", "{0} has IPv6 and an MTU of {1}"};
inline constexpr Template mtu_ipv6_why{"mtu-ipv6-why",
                                       "IPv6 needs links of at least 1280 octets (RFC 8200 5)."};

} // namespace snug::text
