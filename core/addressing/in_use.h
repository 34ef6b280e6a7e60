#pragma once
// Every address that somebody holds, by segment, sorted: what conflicts, planning, tables and budgets look
// at.

#include "core/addressing/conflicts.h"
#include "core/addressing/domains.h"
#include "core/addressing/held.h"

namespace snug {

class AddressesInUse {
 public:
  explicit AddressesInUse(const Index&);
  // Sorted by segment (those without one last), then address (IPv4 first); link-local ones included. Equal
  // ones: PC socket, translator and LAN's router before cards, cards in the lab's order. Cards that are not
  // connected are included (domain kNowhere). A trunk's address belongs to the segment whose prefix holds it.
  using List = HeldList<AddressesInUse>;
  List all() const { return {this, 0, static_cast<std::uint32_t>(order_.size())}; }
  List on(std::uint32_t segment_place) const {
    const std::uint32_t* start = &conflicts_.start[2 * segment_place];
    return {this, start[0], start[2]};
  }
  List on(std::uint32_t segment_place, Family f) const {
    const std::uint32_t* start = &conflicts_.start[2 * segment_place + (f == Family::v4 ? 0 : 1)];
    return {this, start[0], start[1]};
  }
  HeldAddress held(std::uint32_t place) const; // of all()
  // Those on a segment with one address, whatever their layer-2 network.
  List with(std::uint32_t segment_place, const Address&) const;
  // Whether one of them on a segment of this family has a mark.
  bool has_marks(std::uint32_t segment_place, Family f) const {
    return marked_[2 * segment_place + (f == Family::v4 ? 0 : 1)];
  }
  // All marks that occur.
  std::uint8_t any_mark() const { return any_mark_; }
  // IPv4 / IPv6 prefix of a segment: its own, else (bridged) its LAN's.
  std::optional<Prefix> prefix4(std::uint32_t segment_place) const { return prefix4_[segment_place]; }
  std::optional<Prefix> prefix6(std::uint32_t segment_place) const { return prefix6_[segment_place]; }
  const std::optional<Prefix>& prefix(std::uint32_t segment_place, Family f) const {
    return f == Family::v4 ? prefix4_[segment_place] : prefix6_[segment_place];
  }
  // Gateways: typed; NAT: the translator; bridged: the LAN's router.
  std::optional<Address> gateway4(std::uint32_t segment_place) const { return gateway4_[segment_place]; }
  std::optional<Address> gateway6(std::uint32_t segment_place) const { return gateway6_[segment_place]; }
  // The translator of a NAT segment: typed, else the first usable address of the prefix.
  std::optional<Address> translator(std::uint32_t segment_place) const { return translator_[segment_place]; }
  // The PC's IPv4 address where it has a socket: typed, else (not bridged) the numbering scheme's.
  std::optional<Address> pc_address4(std::uint32_t segment_place) const { return pc4_[segment_place]; }
  // DHCP ranges that are well formed and answer on a segment: of its connected cards' servers, of its
  // translator, of its bridged LAN; each with who answers (a card's, the segment's or the LAN's id).
  struct Range {
    AddressRange range;
    AnyId server;
    std::uint32_t domain = kNowhere;
  };
  std::span<const Range> ranges(std::uint32_t segment_place) const {
    return std::span(ranges_).subspan(range_start_[segment_place],
                                      range_start_[segment_place + 1] - range_start_[segment_place]);
  }
  std::span<const Range> ranges() const { return ranges_; } // by segment
  // Equal addresses on a segment (or without one), as places in all(); which addresses of a segment lie in
  // which of ranges(). Whatever their layer-2 networks.
  std::span<const Conflicts::Run> equal() const { return conflicts_.equal; }
  std::span<const Conflicts::Inside> inside_ranges() const { return conflicts_.inside; }
  // Places of the machines with a route whose next hop is not simply the gateway of its card's segment.
  std::span<const std::uint32_t> odd_routes() const { return odd_routes_; }
  const Domains& domains() const { return domains_; }
  const NetworkFacts& facts() const { return *facts_; }
  // The segment of a card that an address belongs to: its own, or that of its trunk whose prefix holds the
  // address; kNowhere: none.
  std::uint32_t segment_for(const Index&, std::uint32_t card_place, const Address&) const;

 private:
  void read_segments(const Index&);
  void collect_ranges(const Index&);
  std::vector<HeldAddress> held_by_segments(const Index&) const;
  std::uint32_t segment_of(const Index&, const AddressRow&) const;
  Groups by_group(const Index&) const;
  std::vector<PackedRange> packed_ranges() const;
  void sort_and_hold(const Index&);
  std::optional<Prefix> prefix_of_group(std::uint32_t group) const;
  bool fill(std::uint32_t group, std::span<const std::uint32_t> places, std::vector<WideKey>& keys) const;
  void note_marks(std::uint32_t group, std::uint32_t first);
  // The network where a card meets a segment.
  std::uint32_t domain_of(const Index& index, std::uint32_t card, std::uint32_t segment_place) const {
    return segment_place == facts_->card_segment[card] ? domains_.of_card(card)
                                                       : domain_elsewhere(index, card, segment_place);
  }
  std::uint32_t domain_elsewhere(const Index&, std::uint32_t card, std::uint32_t segment_place) const;
  bool is_plain(const Index&, const Route&) const;
  void judge_routes(const Index&);

  const Index* index_;
  const NetworkFacts* facts_;
  Domains domains_;
  std::vector<HeldAddress> others_;  // of PC sockets, translators and LANs' routers
  std::vector<std::uint32_t> order_; // sorted: places in others_, then in facts_->addresses
  Conflicts conflicts_;              // groups: each segment's IPv4, then its IPv6 addresses
  std::vector<std::optional<Prefix>> prefix4_, prefix6_;
  std::vector<std::optional<Address>> gateway4_, gateway6_, translator_, pc4_;
  std::vector<Range> ranges_;
  std::vector<std::uint32_t> range_start_;
  std::vector<std::uint32_t> odd_routes_;
  std::vector<bool> marked_; // by group
  std::uint8_t any_mark_ = 0;
};

} // namespace snug
