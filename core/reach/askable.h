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

// One of several addresses of a machine.
struct AskableAddress {
  Address address;
  std::string name; // "172.22.40.11 on Passengers"
};
// The fixed addresses of a machine, in the order of its cards; empty where there is no choice.
std::vector<AskableAddress> askable_addresses(const Index&, AnyId node);

// An end of a question as people type it.
struct AskedEnd {
  AnyId node;
  std::optional<Address> address; // empty: the best of those it has
};
// What comes after the slash of "tickets-1/Crew": a card of the machine by its name, id, segment or number
// among the machine's cards. Refuses where there is none or it has no address in `network`.
Result<Address> address_on_card(const Index&, const ReachNetwork& network, MachineId, std::string_view card);
// Who has an address, given ones included.
Result<AskedEnd> end_at(const ReachNetwork&, const Address&);

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
