#pragma once
// Whether two machines surely talk, from the plan alone and without a network: cards on one switch, with one
// address of its prefix each that nobody else has there, and nothing that would send their packets another
// way.

#include "core/addressing/in_use.h"

namespace snug {

class Neighbours {
 public:
  Neighbours(const Index&, const AddressesInUse&); // refers to both
  // Of two different machines by place, both running. False: it has to be asked.
  bool surely_talk(std::uint32_t a, std::uint32_t b) const;

 private:
  // A card that can be reached without doubt by its neighbours.
  struct Plain {
    std::uint32_t segment = kNowhere; // kNowhere: it is not such a card
    std::uint32_t address = 0;        // IPv4
  };
  void find_plain();
  void drop_shared();
  bool is_plain(std::uint32_t card) const;
  bool keeps_to(std::uint32_t machine, std::uint32_t card, std::uint32_t to) const;
  std::span<const AddressRow> rows(std::uint32_t card) const;
  std::int32_t length4(const AddressRow&) const;

  const Index& index_;
  const NetworkFacts& facts_;
  const AddressesInUse& addresses_;
  std::vector<std::uint8_t> plain_machine_, plain_segment_;
  std::vector<std::uint32_t> first_row_; // in the facts' addresses, by card
  std::vector<Plain> plain_;             // by card
};

} // namespace snug
