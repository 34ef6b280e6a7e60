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
    Address address;
  };
  Plain plain(std::uint32_t card) const;
  bool keeps_to(std::uint32_t machine, std::uint32_t card, const Address& to) const;

  const Index& index_;
  const AddressesInUse& addresses_;
  std::vector<std::uint8_t> plain_machine_;
  std::vector<Plain> plain_; // by card
};

} // namespace snug
