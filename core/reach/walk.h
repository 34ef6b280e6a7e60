#pragma once
// Sends a packet through a ReachNetwork and the answer back, as a kernel would: RFC 1122 and 1812 for IPv4
// (weak host model, longest prefix), RFC 8200 and 4443 for IPv6, address resolution by RFC 826 and 4861.

#include "core/reach/network.h"

namespace snug {

enum class Decision : std::uint8_t {
  // On the way.
  sends,      // by this card to the neighbour `address`
  forwards,   // the same, for others
  translates, // with `address` as the new source
  restores,   // puts the inside address back: `address`
  redirects,  // what comes to a forwarded port: on to the inside `address`
  receives,   // takes the packet for itself
  // Where it ends.
  is_off,
  no_source,     // has no address to send from
  no_route,      // to `address`
  refuses,       // `address` is not one to send to: broadcast, multicast, loopback
  not_plugged,   // the card has no network
  nobody,        // `address` is nobody's in this network
  unheard,       // somebody has `address`, but frames do not pass
  ignores,       // the neighbour does not answer: it has no way back (reverse path), or has the same address
  other_macs,    // only the hypervisor's own MAC passes here
  separated,     // both are separated ports
  same_mac,      // both have one MAC
  too_big,       // longer than a card or switch on the way takes; no error tells the sender
  must_fragment, // longer than the next card takes, and may not be cut (RFC 1812 5.3.7, RFC 8200 5)
  does_not_forward,
  reverse_path, // the way back uses another card (RFC 3704)
  own_source,   // the packet claims to come from this system's own address
  hop_limit,
  link_scope,   // link-local IPv6 addresses do not leave their network (RFC 4291 2.5.6)
  someone_else, // another machine has `address` and took the packet
  other_source, // the answer comes from `address`, who was not asked
  not_offered,  // it arrives, but nothing answers on that port
};
// Stable words for files: "sends", "no-route".
std::string_view word(Decision);
constexpr bool ends(Decision d) { return d >= Decision::is_off; }

struct ReachHop {
  std::uint32_t node = kNowhere;
  std::uint32_t port = kNowhere;
  Decision what = Decision::sends;
  Address address;
  bool back = false;        // on the way of the answer
  std::int32_t service = 0; // of one that redirects: the port outside
};

enum class Reached : std::uint8_t { reaches, one_way, unreliable, does_not_reach };

// One question. Sizes are octets of the IP packet.
struct ReachProbe {
  std::uint32_t from = kNowhere; // nodes
  std::uint32_t to = kNowhere;
  Address target;
  std::uint32_t by = kNowhere; // port to send by, for link-local addresses
  Transport transport = Transport::icmp;
  std::int32_t port = 0; // that it is sent to; 0: none
  std::int32_t size = 84;
  std::int32_t hop_limit = 64;
  bool keep_whole = false;      // may not be cut on the way
  bool full_size = false;       // as much as the first card takes; with tcp: a long transfer
  bool keep_neighbours = false; // after the question before, with what was learned then
};

// Keeps its working memory: no allocation once it has grown.
class Walker {
 public:
  explicit Walker(const ReachNetwork& network, ReachAssumptions assumptions = {})
      : n_(network), assumptions_(assumptions) {}
  Reached ask(const ReachProbe&);
  // Of the last question; the branch that failed where it was unreliable.
  std::span<const ReachHop> hops() const { return hops_; }
  // The address that several have, where it was unreliable or where chance decides how far a packet comes.
  const std::optional<Address>& ambiguous() const { return ambiguous_; }

 private:
  struct Packet {
    std::optional<Address> from;
    Address to;
    std::int32_t size = 84; // of the largest piece
    std::int32_t left = 64; // hops
    std::int32_t port = 0;
    std::uint32_t near = kNowhere; // port that it leaves by where two ways are equal
    bool back = false;
    bool is_error = false;
  };
  struct Neighbour {
    std::uint32_t port;
    Address address;
    std::uint32_t at; // port
  };
  struct Translation {
    std::uint32_t node;
    Address inside, outside, other; // equal ones: known, but not translated
    bool redirected = false;        // `inside` is who was sent to, else who sent
  };
  struct Choice {
    std::size_t picked, count;
  };
  struct Way {
    std::uint32_t port = kNowhere;
    Address neighbour;
    std::optional<Address> source;
    bool broadcast = false;
  };

  Reached ask_once(const ReachProbe&);
  Reached transfer(const ReachProbe&);
  Reached exchange(const ReachProbe&);
  bool next_branch();
  std::size_t choose(std::size_t count);
  bool stop(std::uint32_t node, std::uint32_t port, Decision, const Address&);
  // Node that took the packet; kNowhere: the last hop says why not.
  std::uint32_t travel(Packet&, std::uint32_t node, std::uint32_t by);
  std::uint32_t leave(Packet&, std::uint32_t node, std::uint32_t in, const Way&); // port where it arrives
  bool accepts(Packet&, std::uint32_t port, bool& is_mine);
  bool may_pass(const Packet&, std::uint32_t port);
  bool fit(Packet&, std::uint32_t node, std::uint32_t in, const Way&);
  std::optional<Way> route(std::uint32_t node, const Packet&, std::uint32_t in, std::uint32_t by);
  bool is_broadcast(std::uint32_t node, const Address&) const;
  bool refuses(const Packet&) const;
  void restore(Packet&, std::uint32_t node);
  void redirect(Packet&, std::uint32_t in);
  bool translates(std::uint32_t node) const;
  bool translate(Packet&, std::uint32_t node, const Way&);
  std::uint32_t neighbour(std::uint32_t port, const Address&, const Packet&);
  Decision takes(std::uint32_t asking, std::uint32_t asked, const Address& asker) const;
  Decision hears(std::uint32_t asking, std::uint32_t asked, const Address& asker);
  bool reverse_ok(std::uint32_t port, const Address& source) const;
  std::uint32_t receiver(std::uint32_t out, std::uint32_t in) const;
  void learn(std::uint32_t port, const Address&, std::uint32_t at);
  std::uint32_t learned(std::uint32_t port, const Address&) const;
  void speak(std::uint32_t port);
  bool error_returns();
  std::uint32_t flood(const Packet&, std::uint32_t port);

  const ReachNetwork& n_;
  ReachAssumptions assumptions_;
  ReachProbe probe_;
  std::vector<ReachHop> hops_, kept_;
  std::vector<Neighbour> learned_;
  std::vector<Translation> translations_;
  std::vector<Choice> choices_;
  std::vector<std::uint32_t> candidates_, heard_, spoke_;
  std::size_t choice_ = 0;
  std::int32_t path_mtu_[2] = {0, 0}; // there, back
  std::int32_t out_mtu_[2] = {0, 0};
  std::int32_t error_mtu_ = 0;       // what would have passed where the last packet was too long
  std::optional<Address> lost_from_; // who sent that packet, as it was there
  std::optional<Address> ambiguous_, unsure_;
};

} // namespace snug
