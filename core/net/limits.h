#pragma once
// Limits of the standards that several folders need.

#include <cstdint>

namespace snug {

// VLAN identifiers: IEEE Std 802.1Q; 0 is a priority tag only, 4095 is reserved (from memory).
inline constexpr int kMinVlan = 1;
inline constexpr int kMaxVlan = 4094;
constexpr bool is_vlan_id(std::int64_t id) { return id >= kMinVlan && id <= kMaxVlan; }

// Datagram sizes in octets: RFC 791 3.2 and 3.1, RFC 8200 5; Ethernet payload IEEE Std 802.3 (from memory);
// jumbo frames are common practice, no published standard.
inline constexpr int kIpv4LeastMtu = 68;
inline constexpr int kIpv6LeastMtu = 1280;
inline constexpr int kIpMostMtu = 65535;
inline constexpr int kEthernetMtu = 1500;
inline constexpr int kJumboMtu = 9000;

// Characters: RFC 1035 2.3.4, RFC 2181 11; 253 = 255 octets on the wire less the first length octet and
// the root.
inline constexpr int kMaxLabel = 63;
inline constexpr int kMaxDomainName = 253;

// RFC 4291 2.5.1; RFC 4193 3.1.
inline constexpr int kInterfaceIdBits = 64;
inline constexpr int kUniqueLocalSiteLength = 48;

} // namespace snug
