#pragma once
// One system of a PacketSim: its cards, addresses and routes, and what it looks up in them. After RFC 1122
// and 1812 (weak host, longest prefix), RFC 3704, RFC 6724; where they leave it open, as Linux does.

#include "tests/support/packet_wires.h"

namespace snug::test::sim {

struct Held {
  Address address;
  int length = 0;
};

struct HostCard {
  AnyId id;
  unsigned host = 0;
  std::uint32_t segment = kNone; // place
  std::uint64_t mac = 0;
  int mtu = 1500;
  bool forwards4 = false, forwards6 = false, masquerades = false;
  std::vector<Held> addresses;
  bool has_v6() const { return mtu >= 1280; } // RFC 8200 5
  Address link_local() const;
};

struct HostRoute {
  Prefix to;
  std::optional<Address> via;
  unsigned card = kNone;
  int metric = 0;
  std::optional<Address> source;
};

struct Host {
  AnyId id;
  bool on = true;
  ReverseFilter filter = ReverseFilter::off;
  unsigned first_card = 0, end_card = 0; // of the world's
  std::vector<HostRoute> routes;         // in the order in which they were set
};

// What an IPv4 address is to a system.
enum class Is : std::uint8_t { elsewhere, own, broadcast };

// A host with the list in which its cards stand.
class HostView {
 public:
  HostView(Host& host, const std::vector<HostCard>& cards) : h_(host), cards_(cards) {}
  // `card`: only what belongs to it. The first that was set decides.
  Is type4(const Address&, unsigned card = kNone, unsigned* where = nullptr) const;
  bool owns(const Address&) const;
  // `near`: of equal ones the one by this card.
  const HostRoute* route(const Address& to, unsigned card = kNone, unsigned near = kNone) const;
  std::optional<Address> source4(unsigned card, const std::optional<Address>& near) const;
  std::optional<Address> source6(unsigned card, const Address& to) const;
  // Whether a packet from there may come in by a card.
  bool source_ok(unsigned card, const Address& from) const;

  void add_connected();
  // As `route add` does: what cannot be is refused.
  void add_route(const Route&, unsigned card, bool card_is_missing);
  void insert(const HostRoute&);

 private:
  const HostRoute* route_to_gateway4(const Address&, unsigned card) const;
  void add_route4(const Route&, unsigned card);
  void add_route6(const Route&, unsigned card);
  Host& h_;
  const std::vector<HostCard>& cards_;
};

} // namespace snug::test::sim
