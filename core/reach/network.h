#pragma once
// The network of a lab as the systems in it see it: who has which card where, which addresses and routes each
// one really ends up with, and through which switches a frame must pass. Built for one exercise. Routes and
// who has an address are found when they are first asked for, so one thread at a time. Holds pointers into
// the index: valid as long as that and its lab are.

#include "core/addressing/in_use.h"
#include "core/reach/address_table.h"
#include "core/reach/lease_choices.h"
#include "core/reach/route_store.h"

#include <memory>
#include <span>
#include <vector>

namespace snug {

// What is assumed of systems and cannot be seen in the plan.
struct ReachAssumptions {
  bool detects_duplicates = true; // IPv6 duplicate address detection (RFC 4862 5.4)
};

// Somebody who can send: a machine, the PC, a segment's translator, a LAN's router, the outside.
struct ReachNode {
  AnyId id; // machine, pc, segment, lan, outside
  bool on = true;
  bool forwards6 = false; // by any card: ignores router advertisements (RFC 4861 6.2.1 for routers)
  ReverseFilter filter = ReverseFilter::off;
  std::uint32_t first_port = 0, end_port = 0;
};

// A card on one segment, or one segment of a trunk.
struct ReachPort {
  std::uint32_t node = 0;
  AnyId id;                         // card, segment (the PC's socket, its translator), lan, outside
  std::uint32_t segment = kNowhere; // place in lab.segments
  std::uint32_t piece = kNowhere;   // the switch it is plugged into; kNowhere: not plugged
  bool inside = false;              // the hypervisor's own end of a switch in it, not a plug
  bool separated = false;
  bool forwards4 = false, forwards6 = false;
  bool translates = false;
  bool wants_lease = false, wants_advertised = false, advertises = false;
  bool mac_twice = false; // another port in its layer-2 network has the same MAC
  std::int32_t mtu = 1500;
  std::uint64_t mac = 0;
  std::uint32_t first_address = 0, end_address = 0;
};

inline constexpr std::uint32_t kBeyond = 0; // the piece of the outside

// A segment outside or inside one hypervisor (DECISIONS 12), a physical LAN, or what lies beyond.
struct ReachPiece {
  std::uint32_t segment = kNowhere;
  std::uint32_t parent = kNowhere; // the switch outside; kNowhere: none
  std::uint32_t root = 0;          // same root: one layer-2 network
  std::int32_t depth = 0;
  std::int32_t port_mtu = 1500;
  CardId up; // that joins it to its parent, or would if it were connected; none: joined by a cable
  bool up_own_mac_only = false, up_separated = false;
  std::int32_t up_mtu = 1500;
  std::uint64_t up_mac = 0;
};

// What comes to an outer address of a translator on this port goes on to an inner one.
struct ReachForward {
  std::uint32_t node = 0;
  Transport transport = Transport::tcp;
  std::int32_t port = 0, to_port = 0;
  Address to;
};

// Whether the same addresses are given out and taken whichever of the two run.
bool gives_same(const Index&, std::span<const std::uint8_t> running, std::span<const std::uint8_t> others);

// Why a frame does not get from one port to another.
enum class FrameStop : std::uint8_t { none, apart, same_mac, other_mac, separated, too_big };

class ReachNetwork {
 public:
  // `running`: 1 or 0 for each of lab.machines. `choices`: which of several DHCP servers answers first.
  ReachNetwork(const Index&, const AddressesInUse&, std::span<const std::uint8_t> running, LeaseChoices&);
  // The same network with others running; see gives_same().
  ReachNetwork(const ReachNetwork&, std::span<const std::uint8_t> running);

  std::span<const ReachNode> nodes() const { return nodes_; }
  std::span<const ReachPort> ports() const { return body_->ports; }
  std::span<const ReachPiece> pieces() const { return body_->pieces; }
  std::span<const ReachAddress> addresses(const ReachPort& p) const {
    return std::span(body_->addresses).subspan(p.first_address, p.end_address - p.first_address);
  }
  // Of one of nodes(). Longest prefix first, then the lowest metric, then the first that was set.
  std::span<const ReachRoute> routes(const ReachNode&) const;
  // Those who have an address, whether on or off.
  std::span<const ReachAddress> with(const Address&) const;
  // Ports with a MAC; only those that share it are listed.
  std::span<const std::uint32_t> shared_macs() const { return body_->shared_macs; }
  std::span<const ReachForward> forwards() const { return body_->forwards; }
  std::span<const std::uint32_t> forwarders() const {
    return body_->forwarders;
  } // ports that pass packets on
  // kNowhere: no such node. "outside" is one.
  std::uint32_t node_of(AnyId) const;
  std::uint32_t port_of(std::uint32_t node, CardId) const; // the first; kNowhere
  // A packet of `size` octets in one frame. Ports of one layer-2 network.
  FrameStop frame(std::uint32_t from, std::uint32_t to, std::int32_t size) const;
  bool same_network(std::uint32_t a, std::uint32_t b) const;
  bool owns(const ReachNode&, const Address&) const;
  // The address a system puts into packets that leave by a port for `towards`; IPv4.
  std::optional<Address> source4(std::uint32_t port, const std::optional<Address>& towards) const;
  std::optional<Address> source6(std::uint32_t port, const Address& target) const;
  std::optional<Address> link_local(const ReachPort&) const; // IPv6; none where IPv6 is off

 private:
  friend class ReachBuilder;
  // What does not change with who is on, as long as nobody who gives or gets addresses is switched.
  struct Body {
    std::vector<ReachPort> ports;
    std::vector<ReachPiece> pieces;
    std::vector<ReachAddress> addresses; // by port
    std::vector<std::uint32_t> shared_macs, forwarders;
    std::vector<ReachForward> forwards;
    std::vector<std::pair<AnyId, std::uint32_t>> ids; // of others than machines; sorted
    GivenRoutes given;
    const Index* index = nullptr;
    // Found when they are first asked for.
    mutable RouteStore routes;
    mutable AddressTable held4, held6, held_local; // IPv6: link-local ones apart
  };
  AddressTable& table(const Address&) const;
  void fill_table(const Address& like) const;
  bool is_shadowed(std::uint32_t place) const;
  std::vector<ReachNode> nodes_; // machines first, in the lab's order
  std::shared_ptr<const Body> body_;
};

// How many bits two addresses of one family begin with alike (RFC 6724 2.2), as of 128.
int common_bits(const Address&, const Address&);

// IPv6 does not run over less (RFC 8200 5).
inline constexpr std::int32_t kLeastMtu6 = 1280;

} // namespace snug
