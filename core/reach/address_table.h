#pragma once
// Who has an address: those with equal ones lie side by side.

#include "core/net/prefix.h"

#include <cstdint>
#include <span>
#include <vector>

namespace snug {

struct ReachAddress {
  Address address;
  std::int32_t length = 0;
  std::uint32_t port = 0;
};

class AddressTable {
 public:
  bool is_filled() const { return !start_.empty(); }
  // Equal ones keep their order.
  void fill(std::span<const ReachAddress>);
  std::span<const ReachAddress> with(const Address&) const; // once it is filled

 private:
  std::size_t slot(const Address& a) const {
    const std::uint64_t mixed = (a.low() ^ a.high() * 0xc2b2'ae3d'27d4'eb4fULL) * 0x9e37'79b9'7f4a'7c15ULL;
    return static_cast<std::size_t>(mixed >> shift_);
  }
  std::uint32_t shift_ = 0;
  std::vector<std::uint32_t> start_; // by slot, and the end
  std::vector<ReachAddress> held_;   // by slot, then by address
};

} // namespace snug
