#pragma once
// One question of a PacketSim in one world: the events.

#include "tests/support/packet_sim.h"

namespace snug::test {

class PacketSim::Run {
 public:
  Run(sim::World& world, Odometer& chance, const ReachQuestion& q) : w_(world), chance_(chance), q_(q) {}
  Reached play();

 private:
  using Packet = sim::Packet;
  using Frame = sim::Frame;
  struct Arrival {
    unsigned card;
    Frame frame;
  };
  struct Neighbour {
    unsigned card;
    Address address;
    std::uint64_t mac;
  };
  struct Waiting {
    unsigned card;
    Address hop;
    Packet packet;
  };
  // What a system that translates remembers (RFC 3022).
  struct Flow {
    unsigned host;
    Address from, to, as; // as: the new source
  };

  Reached exchange(int size, bool whole);
  Reached transfer();
  void settle(); // until nothing moves

  // Layer 2.
  void transmit(unsigned card, const Frame&);
  void resolve(unsigned card, const Address& hop, const Packet&);
  void deliver(unsigned card, const Frame&);
  void hear_question(unsigned card, const Frame&);
  bool would_answer(unsigned card, const Frame&);
  void learn(unsigned card, const Address&, std::uint64_t mac);
  const std::uint64_t* known(unsigned card, const Address&) const;
  void put(unsigned card, std::uint64_t mac, const Packet&);

  // Layer 3.
  void send(unsigned host, Packet, unsigned by, unsigned near = sim::kNone);
  void broadcast(unsigned host, Packet&);
  void receive(unsigned card, const Frame&);
  void accept(unsigned host, unsigned card, const Packet&);
  void forward(unsigned card, Packet);
  void restore(unsigned host, Packet&);
  bool translate(unsigned host, unsigned card, const Address& hop, Packet&);
  bool translates(unsigned host) const;
  void note(const Flow&);
  void refuse_size(unsigned host, const Packet&, int room);
  static void cut(Packet&, int room);
  int& path(unsigned host, const Address& to);

  sim::World& w_;
  Odometer& chance_;
  const ReachQuestion& q_;
  unsigned from_ = sim::kNone, to_ = sim::kNone;
  std::deque<Arrival> events_;
  std::vector<Neighbour> neighbours_;
  std::vector<Waiting> waiting_;
  std::vector<Flow> flows_;
  std::vector<std::pair<std::pair<unsigned, Address>, int>> paths_; // octets that pass to an address
  bool arrived_ = false, answered_ = false, told_ = false;          // told: of a smaller size
  int first_mtu_ = 0, last_mtu_ = 0; // of the cards by which question and answer first left
};

} // namespace snug::test
