#pragma once
// Who answers DHCP and IPv6 router solicitations where.

#include "core/findings/context.h"

namespace snug {

struct DhcpServer {
  std::uint32_t segment = kNowhere;
  std::uint32_t domain = kNowhere;
  AnyId id; // card; segment: its translator; LAN
};

// Cards' servers that are connected, and translators; sorted by domain, then segment, translators first.
std::vector<DhcpServer> dhcp_servers(const Context&);
// By domain: 1 where somebody may answer DHCP (servers, relays, a LAN that is not known to have none).
std::vector<std::uint8_t> domains_with_dhcp(const Context&);
// By domain: 1 where a card advertises itself as a router, or a LAN may do so.
std::vector<std::uint8_t> domains_with_advertisements(const Context&);
// The segment that a card with a DHCP server serves: that of its ranges, else its own.
std::uint32_t served_segment(const Context&, std::uint32_t card_place);
// "beacon", "the translator of Crew".
Argument server_name(const Context&, AnyId server);

} // namespace snug
