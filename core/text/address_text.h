#pragma once
// Sentences about conflicting, misplaced and special addresses.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template translator_of{"translator-of", "the translator of {0}"};
inline constexpr Template router_of{"router-of", "the router of {0}"};
inline constexpr Template fix_use_address{"fix-use-address", "Use {0} on {1}"};
inline constexpr Template fix_move_to_address{"fix-move-to-address", "Move {0} to {1}"};
inline constexpr Template fix_use_length{"fix-use-length", "Use /{0} on {1}"};

inline constexpr Template address_twice{"address-twice", "{0} belongs to both {1} and {2} on {3}"};
inline constexpr Template address_twice_why{
    "address-twice-why", "Neighbours find now the one, now the other: connections break without a message. "
                         "Give one of them a free address."};
inline constexpr Template address_outside{"address-outside", "{0} of {1} does not lie in {2} ({3})"};
inline constexpr Template address_outside_why{
    "address-outside-why", "Nobody on {0} takes it for a neighbour, so nothing on this segment reaches it."};
inline constexpr Template address_length{"address-length",
                                         "{1} has {0}/{2}, but the prefix of {3} has the length {4}"};
inline constexpr Template address_length_why{
    "address-length-why",
    "With another length it takes strangers for neighbours, or neighbours for strangers."};
inline constexpr Template address_network{"address-network",
                                          "{0} of {1} is the network address of {2} ({3})"};
inline constexpr Template address_broadcast{"address-broadcast",
                                            "{0} of {1} is the broadcast address of {2} ({3})"};
inline constexpr Template address_broadcast_why{
    "address-broadcast-why",
    "The first and the last address of an IPv4 network belong to no host; only a /31 "
    "or /32 has none of them (RFC 3021)."};

inline constexpr Template kept_form{"kept-form", "the kept addresses of {0} from {1} to {2} are not a range"};
inline constexpr Template kept_form_why{
    "kept-form-why", "Nothing is kept free by it. It starts at the lower address and ends at the higher one, "
                     "both of one family; a single address is written twice."};
inline constexpr Template fix_keep{"fix-keep", "Keep {0} free"};
inline constexpr Template address_unusable{"address-unusable", "{0} of {1} is kept for \"{2}\" ({3})"};
inline constexpr Template address_unusable_why{
    "address-unusable-why", "No host can use such an address on a network. Give it one of its segment."};
inline constexpr Template address_special{"address-special", "{0} has {1}, which is kept for \"{2}\" ({3})"};
inline constexpr Template address_special_why{"address-special-why",
                                              "Systems may refuse or filter these addresses. A private block "
                                              "of RFC 1918 or RFC 4193 has no surprises."};
inline constexpr Template address_public{"address-public",
                                         "{0} has {1}, which belongs to somebody in the Internet"};
inline constexpr Template address_public_why{
    "address-public-why", "The lab cannot reach the owner of these addresses, and packets that slip out go "
                          "there. Use a private block of RFC 1918 or RFC 4193."};
inline constexpr Template address_missing{"address-missing", "{0} has no address on {1} yet"};
inline constexpr Template address_missing_why{
    "address-missing-why", "It cannot be reached there. Suggesting addresses fills it, or let it ask DHCP."};

inline constexpr Template segments_overlap{"segments-overlap", "{0} ({1}) and {2} ({3}) overlap"};
inline constexpr Template segments_overlap_why{
    "segments-overlap-why",
    "A machine that knows both cannot tell where such an address is. Give one of them "
    "another prefix."};
inline constexpr Template segment_lan_overlap{"segment-lan-overlap",
                                              "{0} ({1}) collides with the LAN {2} ({3})"};
inline constexpr Template segment_place_overlap{"segment-place-overlap", "{0} ({1}) collides with {2} ({3})"};
inline constexpr Template segment_place_overlap_why{
    "segment-place-overlap-why", "The PC then sends packets for the one into the other: part of the lab or "
                                 "part of the world disappears. Move the segment to another prefix."};
inline constexpr Template fix_use_prefix{"fix-use-prefix", "Use {0} for {1}"};

inline constexpr Template lan_pool_unknown{
    "lan-pool-unknown",
    "{0} has the fixed {1} on {2}, and nobody knows which addresses DHCP gives out there"};
inline constexpr Template lan_pool_unknown_why{
    "lan-pool-unknown-why", "The same address may be given to somebody else. Ask the network's administrator "
                            "for the pool and enter it with the LAN, or let {0} ask DHCP."};
inline constexpr Template fix_ask_dhcp{"fix-ask-dhcp", "Let {0} ask DHCP"};

} // namespace snug::text
