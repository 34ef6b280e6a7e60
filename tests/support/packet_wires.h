#pragma once
// Frames and the switches they pass, one frame after the other (IEEE 802.1D: learn where a MAC spoke last,
// flood what is not known). Part of PacketSim, which knows nothing of core/reach but its questions.

#include "core/model/lab.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace snug::test::sim {

inline constexpr std::uint64_t kEverybody = 0xffff'ffff'ffffULL;
inline constexpr unsigned kNone = 0xffff'ffffU;

struct Packet {
  enum class What : std::uint8_t { request, reply, too_long };
  What what = What::request;
  Transport transport = Transport::icmp;
  std::optional<Address> from;
  Address to;
  int size = 84;      // octets of its largest piece
  int whole_size = 0; // before it was cut
  int left = 64;      // hops
  int port = 0;
  bool whole = false;   // may not be cut
  unsigned by = kNone;  // of a reply: the host that answers
  int room = 0;         // of an error: octets that would have passed
  Address lost_to = {}; // of an error: where the lost packet went
};

struct Frame {
  enum class What : std::uint8_t { question, answer, packet, hello };
  What what = What::packet;
  std::uint64_t from = 0, to = kEverybody; // MACs
  Address asker, asked;                    // of questions and answers (RFC 826, RFC 4861 7.2)
  Packet packet;
  int size() const { return what == What::packet ? packet.size : 60; }
};

class Wires {
 public:
  unsigned add_switch(int port_mtu);
  struct Plug {
    int mtu = 1500; // of the card
    bool separated = false;
    std::optional<std::uint64_t> only; // the MAC that may send here
  };
  void plug(unsigned card, unsigned in, const Plug&);
  // The system's own end of a switch inside it.
  void seat(unsigned card, unsigned in, std::uint64_t mac);
  // By the card of a system with a switch inside; without `uplink` a cable that takes any size.
  void join(unsigned inner, unsigned outer, const std::optional<Plug>& uplink);
  // Appends the cards where the frame arrives.
  void send(unsigned card, const Frame&, std::vector<unsigned>& arrivals);
  bool is_plugged(unsigned card) const { return card < seats_.size() && seats_[card].first != kNone; }
  void forget();

 private:
  struct Port {
    unsigned card = kNone;                         // at the other end
    unsigned far_switch = kNone, far_port = kNone; // or this one
    int room = 0;                                  // the smaller MTU of both ends
    bool limited = true, separated = false, own_end = false;
    std::optional<std::uint64_t> only;
  };
  struct Switch {
    int mtu = 1500;
    std::vector<Port> ports;
    std::vector<std::pair<std::uint64_t, unsigned>> learned; // MAC, port
    std::optional<std::uint64_t> own_mac;
  };
  void enter(unsigned at, unsigned port, const Frame&, std::vector<unsigned>& arrivals);
  void leave(unsigned at, unsigned in, unsigned out, const Frame&, std::vector<unsigned>& arrivals);

  std::vector<Switch> switches_;
  std::vector<std::pair<unsigned, unsigned>> seats_; // of cards: switch and port
};

} // namespace snug::test::sim
