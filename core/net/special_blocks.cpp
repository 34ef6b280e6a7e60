// The IANA IPv4 and IPv6 special-purpose address registries (RFC 6890), copy dated 2026-07-18, and the two
// multicast blocks; tests/data/checks/special-purpose.csv holds the same rows with their flags.

#include "core/net/prefix.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

constexpr Prefix v4(std::uint32_t network, int length) { return Prefix::of(Address::v4(network), length); }
constexpr Prefix v6(std::uint64_t high, std::uint64_t low, int length) {
  return Prefix::of(Address::v6(high, low), length);
}

// Within a family the longest prefixes come first, so the first match is the most specific.
// clang-format off
constexpr SpecialBlock kBlocks[] = {
    {v4(0x00000000, 32), "This host on this network", "RFC 1122, Section 3.2.1.3", true, false, false, false, true},
    {v4(0xc0000008, 32), "IPv4 dummy address", "RFC 7600", true, false, false, false, false},
    {v4(0xc0000009, 32), "Port Control Protocol Anycast", "RFC 7723", true, true, true, true, false},
    {v4(0xc000000a, 32), "Traversal Using Relays around NAT Anycast", "RFC 8155", true, true, true, true, false},
    {v4(0xc00000aa, 32), "NAT64/DNS64 Discovery", "RFC 8880; RFC 7050, Section 2.2", false, false, false, false, true},
    {v4(0xc00000ab, 32), "NAT64/DNS64 Discovery", "RFC 8880; RFC 7050, Section 2.2", false, false, false, false, true},
    {v4(0xc0586302, 32), "6a44-relay anycast address", "RFC 6751", true, true, true, false, false},
    {v4(0xffffffff, 32), "Limited Broadcast", "RFC 8190; RFC 919, Section 7", false, true, false, false, true},
    {v4(0xc0000000, 29), "IPv4 Service Continuity Prefix", "RFC 7335", true, true, true, false, false},
    {v4(0xc0000000, 24), "IETF Protocol Assignments", "RFC 6890, Section 2.1", false, false, false, false, false},
    {v4(0xc0000200, 24), "Documentation (TEST-NET-1)", "RFC 5737", false, false, false, false, false},
    {v4(0xc01fc400, 24), "AS112-v4", "RFC 7535", true, true, true, true, false},
    {v4(0xc034c100, 24), "AMT", "RFC 7450", true, true, true, true, false},
    {v4(0xc0586300, 24), "Deprecated (6to4 Relay Anycast)", "RFC 7526", false, false, false, false, false},
    {v4(0xc0af3000, 24), "Direct Delegation AS112 Service", "RFC 7534", true, true, true, true, false},
    {v4(0xc6336400, 24), "Documentation (TEST-NET-2)", "RFC 5737", false, false, false, false, false},
    {v4(0xcb007100, 24), "Documentation (TEST-NET-3)", "RFC 5737", false, false, false, false, false},
    {v4(0xa9fe0000, 16), "Link Local", "RFC 3927", true, true, false, false, true},
    {v4(0xc0a80000, 16), "Private-Use", "RFC 1918", true, true, true, false, false},
    {v4(0xc6120000, 15), "Benchmarking", "RFC 2544", true, true, true, false, false},
    {v4(0xac100000, 12), "Private-Use", "RFC 1918", true, true, true, false, false},
    {v4(0x64400000, 10), "Shared Address Space", "RFC 6598", true, true, true, false, false},
    {v4(0x00000000, 8), "This network", "RFC 791, Section 3.2", true, false, false, false, true},
    {v4(0x0a000000, 8), "Private-Use", "RFC 1918", true, true, true, false, false},
    {v4(0x7f000000, 8), "Loopback", "RFC 1122, Section 3.2.1.3", false, false, false, false, true},
    {v4(0xe0000000, 4), "Multicast", "RFC 5771 (was class D of RFC 1112)", false, true, false, false, false},
    {v4(0xf0000000, 4), "Reserved", "RFC 1112, Section 4", false, false, false, false, true},
    {v6(0x0000000000000000, 0x0000000000000000, 128), "Unspecified Address", "RFC 4291", true, false, false, false, true},
    {v6(0x0000000000000000, 0x0000000000000001, 128), "Loopback Address", "RFC 4291", false, false, false, false, true},
    {v6(0x2001000100000000, 0x0000000000000001, 128), "Port Control Protocol Anycast", "RFC 7723", true, true, true, true, false},
    {v6(0x2001000100000000, 0x0000000000000002, 128), "Traversal Using Relays around NAT Anycast", "RFC 8155", true, true, true, true, false},
    {v6(0x2001000100000000, 0x0000000000000003, 128), "DNS-SD Service Registration Protocol Anycast", "RFC 9665", true, true, true, true, false},
    {v6(0x0000000000000000, 0x0000ffff00000000, 96), "IPv4-mapped Address", "RFC 4291", false, false, false, false, true},
    {v6(0x0064ff9b00000000, 0x0000000000000000, 96), "IPv4-IPv6 Translat.", "RFC 6052", true, true, true, true, false},
    {v6(0x0100000000000000, 0x0000000000000000, 64), "Discard-Only Address Block", "RFC 6666", true, true, true, false, false},
    {v6(0x0100000000000001, 0x0000000000000000, 64), "Dummy IPv6 Prefix", "RFC 9780", true, false, false, false, false},
    {v6(0x0064ff9b00010000, 0x0000000000000000, 48), "IPv4-IPv6 Translat.", "RFC 8215", true, true, true, false, false},
    {v6(0x2001000200000000, 0x0000000000000000, 48), "Benchmarking", "RFC 5180; RFC Errata 1752", true, true, true, false, false},
    {v6(0x2001000401120000, 0x0000000000000000, 48), "AS112-v6", "RFC 7535", true, true, true, true, false},
    {v6(0x2620004f80000000, 0x0000000000000000, 48), "Direct Delegation AS112 Service", "RFC 7534", true, true, true, true, false},
    {v6(0x2001000000000000, 0x0000000000000000, 32), "TEREDO", "RFC 4380; RFC 8190", true, true, true, false, false},
    {v6(0x2001000300000000, 0x0000000000000000, 32), "AMT", "RFC 7450", true, true, true, true, false},
    {v6(0x20010db800000000, 0x0000000000000000, 32), "Documentation", "RFC 3849", false, false, false, false, false},
    {v6(0x2001001000000000, 0x0000000000000000, 28), "Deprecated (previously ORCHID)", "RFC 4843", false, false, false, false, false},
    {v6(0x2001002000000000, 0x0000000000000000, 28), "ORCHIDv2", "RFC 7343", true, true, true, true, false},
    {v6(0x2001003000000000, 0x0000000000000000, 28), "Drone Remote ID Protocol Entity Tags (DETs) Prefix", "RFC 9374", true, true, true, true, false},
    {v6(0x2001000000000000, 0x0000000000000000, 23), "IETF Protocol Assignments", "RFC 2928", false, false, false, false, false},
    {v6(0x3fff000000000000, 0x0000000000000000, 20), "Documentation", "RFC 9637", false, false, false, false, false},
    {v6(0x2002000000000000, 0x0000000000000000, 16), "6to4", "RFC 3056", true, true, true, false, false},
    {v6(0x5f00000000000000, 0x0000000000000000, 16), "Segment Routing (SRv6) SIDs", "RFC 9602", true, true, true, false, false},
    {v6(0xfe80000000000000, 0x0000000000000000, 10), "Link-Local Unicast", "RFC 4291", true, true, false, false, true},
    {v6(0xff00000000000000, 0x0000000000000000, 8), "Multicast", "RFC 4291 section 2.4 and 2.7", false, true, false, false, false},
    {v6(0xfc00000000000000, 0x0000000000000000, 7), "Unique-Local", "RFC 4193; RFC 8190", true, true, true, false, false},
};
// clang-format on

constexpr Prefix kMulticast4 = v4(0xe0000000, 4), kMulticast6 = v6(0xff00'0000'0000'0000, 0, 8);
constexpr Prefix kLoopback4 = v4(0x7f000000, 8), kLoopback6 = v6(0, 1, 128);
constexpr Prefix kUniqueLocal = v6(0xfc00'0000'0000'0000, 0, 7);
constexpr std::array<Prefix, 3> kPrivate4{v4(0x0a000000, 8), v4(0xac100000, 12), v4(0xc0a80000, 16)};

} // namespace

const SpecialBlock* special_block(const Address& a) {
  for (const SpecialBlock& b : kBlocks)
    if (b.prefix.contains(a)) return &b;
  return nullptr;
}

bool is_private(const Address& a) {
  if (!a.is_v4()) return kUniqueLocal.contains(a);
  return std::any_of(kPrivate4.begin(), kPrivate4.end(), [&a](const Prefix& p) { return p.contains(a); });
}

bool is_multicast(const Address& a) { return kMulticast4.contains(a) || kMulticast6.contains(a); }

bool is_loopback(const Address& a) { return kLoopback4.contains(a) || kLoopback6.contains(a); }

} // namespace snug
