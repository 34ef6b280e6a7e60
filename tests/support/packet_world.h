#pragma once
// The systems and wires of a lab for PacketSim, from MODEL and DECISIONS 12, 13, 14 alone. Trunks, router
// advertisements, DHCP relays and port forwards are left out.

#include "core/model/lab.h"
#include "tests/support/packet_host.h"

#include <functional>
#include <map>
#include <set>

namespace snug::test::sim {

// Asked where several may answer: 0 … n-1.
using Chance = std::function<std::size_t(std::size_t n)>;

class World {
 public:
  // `exercise`: none is everything on. `chance` picks DHCP servers.
  World(const Lab&, ExerciseId exercise, const Chance& chance);

  std::vector<Host> hosts;
  std::vector<HostCard> cards;
  Wires wires;
  unsigned host_of(AnyId) const; // kNone
  HostView view(unsigned host) { return {hosts[host], cards}; }

 private:
  struct Asker {
    unsigned card;
    std::optional<Address> gateway; // once it has an address
  };
  struct Server {
    unsigned card;
    AddressRange range;
    int length;
    std::optional<Address> gateway;
  };
  unsigned place_of(SegmentId) const;
  const Lan* lan_of(const Segment&) const; // of bridged ones
  std::optional<Prefix> prefix_of(const Segment&, Family) const;
  std::optional<Address> gateway_of(const Segment&) const;
  std::optional<Address> translator_of(const Segment&) const;
  std::optional<Address> pc_address_of(const Segment&) const;
  bool is_on(const Machine&, const Exercise*) const;
  bool has_guest_on(MachineId carrier, SegmentId, bool running) const;
  unsigned switch_in(MachineId carrier, SegmentId) const; // kNone
  bool lets_other_macs(const Segment&) const;

  void add_switches();
  void add_machines(const Exercise*);
  void add_card(const Card&);
  void join(const Card&);
  void add_pc();
  void add_translators();
  void add_lan_routers();
  void add_outside();
  unsigned open(AnyId);
  HostCard& new_card(AnyId, std::uint32_t segment, int mtu);
  void plug(unsigned card, unsigned in, const Card* = nullptr);
  void give(unsigned card, const std::optional<Address>&, int length);
  void lease_all(const Chance&);
  std::vector<Server> servers() const;
  bool hears(unsigned from, unsigned to);
  void set_routes();

  const Lab& lab_;
  std::map<std::pair<std::uint32_t, std::uint32_t>, unsigned> switches_; // machine and segment numbers
  std::map<std::pair<std::uint32_t, int>, unsigned> lans_;               // place and VLAN
  std::map<CardId, unsigned> card_of_;
  unsigned beyond_ = 0;
  std::vector<unsigned> on_beyond_;
  std::vector<Asker> askers_;
  std::set<unsigned> joined_; // switches inside with an uplink
};

} // namespace snug::test::sim
