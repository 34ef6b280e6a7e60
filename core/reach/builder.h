#pragma once
// How a ReachNetwork is made; one file a step: pieces, nodes and ports, addresses that are given out,
// forwards.

#include "core/reach/network.h"

#include <map>
#include <set>

namespace snug {

class ReachBuilder {
 public:
  ReachBuilder(ReachNetwork& out, ReachNetwork::Body& body, const Index& index,
               const AddressesInUse& addresses, std::span<const std::uint8_t> running, LeaseChoices& choices)
      : n_(out), b_(body), index_(index), lab_(index.lab()), held_(addresses), running_(running),
        choices_(choices) {}
  void build();

 private:
  void reserve();
  // Pieces.
  void add_pieces();
  void add_lan_pieces();
  void join_carried();
  void note_cut_uplinks();
  bool has_carrier(std::uint32_t machine, std::uint32_t segment) const;
  void settle_pieces();
  std::uint32_t piece(std::uint32_t carrier, std::uint32_t segment) const; // kNowhere: none
  std::uint32_t lan_piece(std::uint32_t lan, std::int32_t vlan);
  static std::uint32_t beyond() { return kBeyond; }

  // Nodes and ports.
  void add_machine(std::uint32_t place);
  void add_port(std::uint32_t machine, std::uint32_t card, std::uint32_t segment);
  void add_card_rows(std::uint32_t port, std::uint32_t card);
  void add_pc();
  void add_translators();
  void add_lan_routers();
  void add_outside();
  void open_node(AnyId id);
  ReachPort& open_port(AnyId id, std::uint32_t segment, std::uint32_t piece);
  void give(const std::optional<Address>&, std::int32_t length, std::uint32_t port);
  void close_node();
  void find_shared_macs();

  // Addresses that are given out.
  struct Lease {
    std::uint32_t server = kNowhere; // port
    AddressRange range;
    std::int32_t length = 0;
    Address next = {}; // all before are taken
  };
  struct Offer {
    Lease* lease;
    std::int32_t length;
  };
  void lease_all();
  std::vector<Lease> servers() const;
  void add_ranges(std::vector<Lease>&, std::uint32_t port, const std::vector<RangeRow>&) const;
  std::vector<Offer> offers_for(std::uint32_t port, std::vector<Lease>& servers) const;
  bool has_free(Lease&) const;
  void find_relays();
  bool answers(std::uint32_t client, std::uint32_t server) const;
  void lease(std::uint32_t port, const Offer&);
  void advertise_all();
  std::vector<Prefix> advertised_by(const ReachPort&) const;
  void sort_addresses();

  // Port forwards.
  void add_forwards();
  void pass_on(const ReachForward&, std::uint32_t outer_port);

  ReachNetwork& n_;
  ReachNetwork::Body& b_; // of n_
  const Index& index_;
  const Lab& lab_;
  const AddressesInUse& held_;
  std::span<const std::uint8_t> running_;
  LeaseChoices& choices_;
  std::vector<std::uint32_t> first_row_;   // in the facts' addresses, by card, and the end
  std::vector<std::uint32_t> piece_start_; // of machines; outside segments follow the first piece
  std::map<std::pair<std::uint32_t, std::int32_t>, std::uint32_t> lan_pieces_;
  bool in_order_ = true;              // addresses came port by port
  std::set<Address> taken_;           // IPv4
  std::vector<std::uint32_t> relays_; // ports
};

} // namespace snug
