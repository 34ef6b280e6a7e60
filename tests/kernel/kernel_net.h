#pragma once
// A lab as network namespaces: one for each running machine, the PC, each translator of a NAT segment and
// each router of a physical LAN, one beyond those, one for all outer segments; a segment or LAN is a bridge,
// a card is a veth pair with its other end on the bridge, a bridged segment hangs on its LAN by a cable.
// Built from the lab alone, without core/reach, except for the addresses that were given out.

#include "core/model/lab.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace snug::test {

// Systems that are no machines. Beyond stands for what lies beyond the translators: 192.0.2.1 (RFC 5737).
inline constexpr MachineId kBeyond{2'000'000}, kPc{3'000'000};
inline MachineId translator_of(SegmentId s) { return {1'000'000 + s.number}; }
MachineId router_of(const Lab&, LanId, std::int32_t vlan);

// An address that a DHCP server gave to a card: of a machine (by its id), of the PC in a segment or LAN, of a
// translator in its LAN.
struct Given {
  MachineId system;
  AnyId card;
  Address address;
  std::int32_t length = 0;
  std::optional<Address> gateway;
};

struct Echo {
  MachineId from, to; // kBeyond, too
  Address target;
  int size = 84; // octets of the IP packet
  bool keep_whole = false;
};
struct EchoSeen {
  bool arrived = false; // at `to`
  bool answered = false;
};

class KernelNet {
 public:
  // `on`: the machines that run. Throws std::runtime_error with what the kernel or a program said.
  KernelNet(const Lab& lab, const std::vector<MachineId>& on, std::vector<Given> given = {});
  ~KernelNet();
  KernelNet(const KernelNet&) = delete;
  KernelNet& operator=(const KernelNet&) = delete;
  // All of one sender, at once, with empty neighbour tables. One result for each, when all
  // have answered or after so many milliseconds.
  std::vector<EchoSeen> send(const std::vector<Echo>&, int milliseconds);

  // Why namespaces, bridges or translation cannot be made here; empty: they can. Gives the process a user
  // namespace of its own where it is not root.
  static std::string why_not();

 private:
  struct Space {
    int net = -1, icmp4 = -1, icmp6 = -1, control = -1, flush = -1;
    std::string batch, translate;
    std::vector<std::string> devices, awaited;
  };
  void open_space(Space&);
  void open_system(MachineId);
  void add_places();
  void add_lans();
  void add_beyond();
  void add_pc();
  void add_translators();
  void add_lan_routers();
  void add_given(MachineId system, AnyId card, const std::string& device);
  void go_beyond(Space&, const std::string& device, bool v6); // by the next address there
  static void masquerade(Space&, const std::string& device);
  std::string lan_bridge(const Segment&) const; // empty: not bridged
  void wire(Space& own, const std::string& name, const std::string& bridge, int mtu);
  void enter(const Space&) const;
  void add_bridges();
  void add_card(const Card&);
  void add_addresses(const Card&, const std::string& device);
  void add_routes(const Machine&, bool on_link);
  std::string device_of(const Card&) const;                  // where its addresses stand
  std::string bridge_in(MachineId carrier, SegmentId) const; // empty: there is none
  Space& space_of(MachineId carrier) { return carrier ? spaces_.at(carrier) : wires_; }
  void set(const Space&, const std::string& key, const std::string& value) const;
  void run(Space&) const;
  void settle(const Machine&);
  static void wait_for(const Space&);
  void forget();
  void send_one(const Echo&, std::uint16_t number);
  void receive(std::vector<EchoSeen>&, const std::vector<Echo>&, int milliseconds);
  void read_all(const Space&, MachineId, std::vector<EchoSeen>&, const std::vector<Echo>&) const;

  const Lab& lab_;
  std::vector<Given> given_;
  std::map<std::pair<LanId, std::int32_t>, std::string> lans_; // and VLAN: the bridge
  int next_beyond_ = 2;
  int home_ = -1;
  Space wires_;
  std::map<MachineId, Space> spaces_;
  std::uint16_t tag_;
  std::uint16_t round_ = 0;
};

} // namespace snug::test
