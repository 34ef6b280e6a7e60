#pragma once
// Which cards share a layer-2 network (DECISIONS 12). A segment exists once outside hypervisors and once as
// a piece in each hypervisor whose guests use it. A connected card that carries the segment joins the piece
// to where that card is plugged. Bridged segments to one LAN with one VLAN id are one network.

#include "core/model/index.h"

#include <span>

namespace snug {

class Domains {
 public:
  explicit Domains(const Index&);

  std::uint32_t count() const { return count_; } // domains are 0 … count-1
  // Where cards of machines on the PC, PC sockets, translators and LANs meet a segment.
  std::uint32_t outside(std::uint32_t segment_place) const { return domain_[segment_place]; }
  // Where guests of `carrier` (kNowhere: the PC) meet a segment; kNowhere: none of them is on it.
  std::uint32_t inside(std::uint32_t carrier_place, std::uint32_t segment_place) const;
  // Of a card's own segment (not its trunk's); kNowhere: not connected or on no segment, so alone.
  std::uint32_t of_card(std::uint32_t card_place) const { return card_domain_[card_place]; }
  // The segments whose pieces are in a machine, as places in lab.segments, ascending.
  std::span<const std::uint32_t> pieces_in(std::uint32_t machine_place) const;

 private:
  void collect_pieces(const Index&);
  void place_cards(const Index&);
  std::uint32_t node(std::uint32_t carrier_place, std::uint32_t segment_place) const;
  void join(std::uint32_t a, std::uint32_t b);
  std::uint32_t root(std::uint32_t n);
  void join_lans(const Index&);
  void join_carried(const Index&);
  void number();

  std::uint32_t segments_ = 0;
  std::uint32_t count_ = 0;
  std::vector<std::uint32_t> piece_start_, piece_segment_; // by machine; node = segments_ + place here
  std::vector<std::uint32_t> domain_;                      // by node
  std::vector<std::uint32_t> card_domain_;
};

} // namespace snug
