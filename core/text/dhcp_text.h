#pragma once
// Sentences about DHCP, its ranges and router advertisements.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template dhcp_on_bridged{"dhcp-on-bridged", "{0} answers DHCP on {1}, which is {2}"};
inline constexpr Template dhcp_on_bridged_why{
    "dhcp-on-bridged-why", "A second DHCP server there can take down a whole house or office. Switch it off "
                           "on this card. Only if you own that network or its owner agreed: accept this "
                           "finding and write down who said so."};
inline constexpr Template advertisement_on_bridged{
    "advertisement-on-bridged", "{0} advertises itself as an IPv6 router on {1}, which is {2}"};
inline constexpr Template advertisement_on_bridged_why{
    "advertisement-on-bridged-why", "Every computer there may send its traffic to {0}. Switch advertisements "
                                    "off on this card. Only if you own that network or its owner agreed: "
                                    "accept this finding and write down who said so."};
inline constexpr Template a_real_lan{"a-real-lan", "one network with a real LAN"};
inline constexpr Template fix_dhcp_off{"fix-dhcp-off", "Switch DHCP off on {0}"};
inline constexpr Template fix_advertisement_off{"fix-advertisement-off", "Switch advertisements off on {0}"};

inline constexpr Template dhcp_twice{"dhcp-twice", "{0} and {1} both answer DHCP on {2}"};
inline constexpr Template dhcp_twice_why{
    "dhcp-twice-why", "Machines take the first answer: sometimes the one, sometimes the other. Keep one "
                      "server on a segment."};
inline constexpr Template dhcp_nobody{"dhcp-nobody", "{0} asks DHCP on {1}, and nobody answers there"};
inline constexpr Template dhcp_nobody_why{
    "dhcp-nobody-why", "It gets no address. Give it a fixed one, or the segment a DHCP server or relay."};
inline constexpr Template slaac_nobody{
    "slaac-nobody", "{0} waits for an IPv6 router on {1}, and none advertises itself there"};
inline constexpr Template slaac_nobody_why{
    "slaac-nobody-why", "It gets only a link-local address. Switch advertisements on on the router's card."};
inline constexpr Template dhcp_small{"dhcp-small",
                                     "{0} cards ask DHCP on {1}, and {2} addresses are given out",
                                     "one card asks DHCP on {1}, and {2} addresses are given out"};
inline constexpr Template dhcp_small_why{"dhcp-small-why",
                                         "The last ones get no address. Make the range longer."};
inline constexpr Template relay_target{"relay-target", "{0} relays DHCP, but to nobody"};
inline constexpr Template relay_target_why{"relay-target-why",
                                           "Enter the address of the DHCP server (RFC 1542)."};
inline constexpr Template dhcp_no_range{
    "dhcp-no-range", "{0} answers DHCP on {1}, and nobody wrote down which addresses it gives out"};
inline constexpr Template dhcp_no_range_why{
    "dhcp-no-range-why", "A fixed address may be given to somebody else. Enter its range."};
inline constexpr Template fix_use_range{"fix-use-range", "Give out {0}"};

inline constexpr Template address_in_dhcp{"address-in-dhcp",
                                          "{0} of {1} lies in {2}, which {3} gives out on {4}"};
inline constexpr Template address_in_dhcp_why{
    "address-in-dhcp-why", "Sooner or later the server gives it to another machine. Fixed addresses stand "
                           "outside DHCP ranges."};
inline constexpr Template ranges_overlap{"ranges-overlap",
                                         "the DHCP ranges {0} of {1} and {2} of {3} overlap on {4}"};
inline constexpr Template ranges_overlap_why{
    "ranges-overlap-why", "Two servers do not know of each other's leases and give one address out twice."};
inline constexpr Template ranges_overlap_self_why{
    "ranges-overlap-self-why", "A server refuses ranges that overlap, or gives one address out twice."};
inline constexpr Template range_outside{"range-outside", "the DHCP range {0} of {1} leaves {2} ({3})"};
inline constexpr Template range_outside_why{
    "range-outside-why", "Machines with an address from outside cannot talk to their neighbours, and network "
                         "and broadcast address belong to no host."};
inline constexpr Template range_form{"range-form", "the DHCP range of {0} from {1} to {2} is not a range"};
inline constexpr Template range_form_why{
    "range-form-why",
    "It starts at the lower address and ends at the higher one, both of one family. A single "
    "address is written twice."};

} // namespace snug::text
