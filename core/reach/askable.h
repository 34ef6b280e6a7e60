#pragma once
// What a question about reach may name: its ends and its service, as people choose and type them.

#include "core/reach/reach.h"

namespace snug {

struct AskablePlace {
  AnyId id;
  std::string name; // as reach_name; of several with one name all but the first get a number: "web (2)"
};
// The PC, the outside, the machines by name, the routers of LANs, the translators of NAT segments.
std::vector<AskablePlace> askable_places(const Lab&);
bool is_askable(const Lab&, AnyId);

struct Service {
  Transport transport = Transport::icmp;
  std::int32_t port = 0; // 0: any
  friend bool operator==(const Service&, const Service&) = default;
};
// "ping" or "icmp", "tcp", "udp/53"; blanks around it and capitals do not matter. Ports are 1 to 65535.
Result<Service> parse_service(std::string_view);
// "ping", "tcp", "udp/53".
std::string service_text(const Service&);

struct OfferedService {
  std::string name; // "names"
  Service service;
};
// What a machine offers, its role's included; each protocol and port once, in the order they are noted.
std::vector<OfferedService> offers_of(const Index&, AnyId node);

} // namespace snug
