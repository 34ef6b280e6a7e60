#pragma once
// How network_lab makes its labs; one file a step.

#include "tests/support/network_lab.h"

#include <map>
#include <set>

namespace snug::test {

class NetworkMaker {
 public:
  NetworkMaker(Random& r, NetworkSize size) : r_(r), size_(size) {}
  Lab make();

 private:
  template <typename E>
  E& add(E e) {
    e.id.number = lab_.facts.next_id++;
    list_of<E>(lab_).push_back(std::move(e));
    return list_of<E>(lab_).back();
  }
  MachineId add_machine(const char* kind, MachineId carrier);
  Card& add_card(MachineId, std::size_t segment);
  void give(Card&, std::size_t segment, int host);
  bool ask(Card&, std::size_t segment);       // for an address, where somebody gives them
  std::size_t net(std::size_t segment) const; // bridged segments of one LAN share theirs
  int router_host(std::size_t router, std::size_t segment) const;
  void add_lan();
  void unplug_twins();
  void add_servers();
  void add_sockets();
  void add_routers();
  void add_hypervisors();
  void add_hosts();
  std::vector<std::size_t> pick_segments(std::size_t count);
  void add_default(MachineId, CardId, std::size_t segment);
  void route_routers();
  std::size_t segment_of(const Card& c) const;
  void spoil_addresses();
  void spoil_cards();
  void spoil_machines();
  Card& any_card() { return lab_.cards[r_.below(lab_.cards.size())]; }
  Machine& any_machine() { return lab_.machines[r_.below(lab_.machines.size())]; }

  Random& r_;
  NetworkSize size_;
  Lab lab_;
  std::vector<MachineId> routers_, hypervisors_;
  std::map<std::size_t, int> next_host_; // by net
  std::set<std::size_t> served_;         // segments where a router or translator gives addresses
  bool v6_ = false;
};

// The address of a host in the net of a segment.
inline Address v4(std::size_t net, int host) {
  return Address::v4(0x0a00'0000U | static_cast<std::uint32_t>(net + 1) << 8U |
                     static_cast<std::uint32_t>(host));
}
inline Address v6(std::size_t net, int host) {
  return Address::v6(0xfd00'0000'0000'0000ULL | (net + 1) << 32U, static_cast<std::uint64_t>(host));
}

inline constexpr int kTranslator = 250;
inline constexpr int kSocket = 249;
inline constexpr std::size_t kLanNet = 199;

} // namespace snug::test
