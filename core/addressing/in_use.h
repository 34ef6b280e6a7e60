#pragma once
// Every address that somebody holds, by segment, sorted: what conflicts, planning, tables and budgets look
// at.

#include "core/addressing/conflicts.h"
#include "core/addressing/domains.h"

namespace snug {

enum class Holder : std::uint8_t { card, pc_socket, translator, lan_router };

struct HeldAddress {
  Address address;
  std::int16_t length = 0; // prefix length there: as typed, else the segment's; 0: neither
  Holder holder = Holder::card;
  AddressKind kind = AddressKind::typed; // suggested: it may move
  std::uint8_t marks = 0;                // HeldMark
  std::uint16_t row = 0;                 // which of the card's addresses
  std::uint32_t segment = kNowhere;      // place in lab.segments
  std::uint32_t card = kNowhere;         // place in lab.cards, for cards
  std::uint32_t domain = kNowhere;       // layer-2 network; kNowhere: alone
};

// What an address is in its segment.
struct HeldMark {
  static constexpr std::uint8_t outside = 1;      // not in the segment's prefix of its family
  static constexpr std::uint8_t no_prefix = 2;    // the segment has none of its family
  static constexpr std::uint8_t reserved = 4;     // network or broadcast address (not on /31, /32: RFC 3021)
  static constexpr std::uint8_t other_length = 8; // typed length differs from the segment's
  static constexpr std::uint8_t link_local = 16;  // never marked outside
};

class AddressesInUse {
 public:
  explicit AddressesInUse(const Index&);
  // Sorted by segment (those without one last), then address (IPv4 first); link-local ones included. Equal
  // ones: PC socket, translator and LAN's router before cards, cards in the lab's order. Cards that are not
  // connected are included (domain kNowhere). A trunk's address belongs to the segment whose prefix holds it.
  std::span<const HeldAddress> all() const { return held_; }
  std::span<const HeldAddress> on(std::uint32_t segment_place) const {
    const std::vector<std::uint32_t>& start = conflicts_.start;
    return std::span(held_).subspan(start[2 * segment_place],
                                    start[2 * segment_place + 2] - start[2 * segment_place]);
  }
  std::span<const HeldAddress> on(std::uint32_t segment_place, Family f) const {
    const std::uint32_t* start = &conflicts_.start[2 * segment_place + (f == Family::v4 ? 0 : 1)];
    return std::span(held_).subspan(start[0], start[1] - start[0]);
  }
  // Those on a segment with one address, whatever their layer-2 network.
  std::span<const HeldAddress> with(std::uint32_t segment_place, const Address&) const;
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
  Groups by_group(const Index&, std::span<const HeldAddress> first) const;
  std::vector<PackedRange> packed_ranges() const;
  void sort_and_hold(const Index&);
  void hold(const Index&, std::span<const WideKey>, std::span<const HeldAddress> first, std::uint32_t group);
  // The network where a card meets a segment.
  std::uint32_t domain_of(const Index& index, std::uint32_t card, std::uint32_t segment_place) const {
    return segment_place == facts_->card_segment[card] ? domains_.of_card(card)
                                                       : domain_elsewhere(index, card, segment_place);
  }
  std::uint32_t domain_elsewhere(const Index&, std::uint32_t card, std::uint32_t segment_place) const;
  void mark(std::span<HeldAddress>, const std::optional<Prefix>&);
  bool is_plain(const Index&, const Route&) const;
  void judge_routes(const Index&);

  const NetworkFacts* facts_;
  Domains domains_;
  std::vector<HeldAddress> held_;
  Conflicts conflicts_; // groups: each segment's IPv4, then its IPv6 addresses
  std::vector<std::optional<Prefix>> prefix4_, prefix6_;
  std::vector<std::optional<Address>> gateway4_, gateway6_, translator_, pc4_;
  std::vector<Range> ranges_;
  std::vector<std::uint32_t> range_start_;
  std::vector<std::uint32_t> odd_routes_;
  std::vector<bool> marked_; // by group
  std::uint8_t any_mark_ = 0;
};

} // namespace snug
