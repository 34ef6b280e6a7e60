#pragma once
// Every address that somebody holds, by segment, sorted: what conflicts, planning, tables and budgets look
// at.

#include "core/model/index.h"

namespace snug {

enum class Holder : std::uint8_t { card, pc_socket, translator, lan_router };

struct HeldAddress {
  Address address;
  std::int16_t length = 0; // prefix length as configured there
  Holder holder = Holder::card;
  AddressKind kind = AddressKind::typed;
  std::uint32_t segment = kNowhere; // place in lab.segments
  std::uint32_t card = kNowhere;    // place in lab.cards, for cards
  std::uint16_t row = 0;            // which of the card's addresses
};

class AddressesInUse {
 public:
  explicit AddressesInUse(const Index&);
  // Sorted by segment, then address; link-local ones included.
  std::span<const HeldAddress> all() const { return held_; }
  std::span<const HeldAddress> on(std::uint32_t segment_place) const;
  // IPv4 / IPv6 prefix of a segment: its own, else (bridged) its LAN's.
  std::optional<Prefix> prefix4(std::uint32_t segment_place) const { return prefix4_[segment_place]; }
  std::optional<Prefix> prefix6(std::uint32_t segment_place) const { return prefix6_[segment_place]; }
  // Gateways: typed; NAT: the translator; bridged: the LAN's router.
  std::optional<Address> gateway4(std::uint32_t segment_place) const { return gateway4_[segment_place]; }
  std::optional<Address> gateway6(std::uint32_t segment_place) const { return gateway6_[segment_place]; }
  // DHCP ranges answering on a segment: of its cards' servers and of its translator; each with who answers (a
  // card's or the segment's id).
  struct Range {
    AddressRange range;
    AnyId server;
  };
  std::span<const Range> ranges(std::uint32_t segment_place) const;

 private:
  std::vector<HeldAddress> held_;
  std::vector<std::uint32_t> start_;
  std::vector<std::optional<Prefix>> prefix4_, prefix6_;
  std::vector<std::optional<Address>> gateway4_, gateway6_;
  std::vector<Range> ranges_;
  std::vector<std::uint32_t> range_start_;
};

} // namespace snug
