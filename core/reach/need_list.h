#pragma once
// Everything that machines use, and from whom they surely get it without a question to the network.

#include "core/reach/neighbours.h"

namespace snug {

struct ListedNeed {
  std::uint32_t machine = 0;       // place
  const Need* need = nullptr;      // in the lab: of the machine or of its role
  std::uint32_t server = kNowhere; // offers it and is reached whenever both run; kNowhere: it has to be asked
};

// As needs_of() says, in the order of machines, without what a machine gets from itself. Refers to the lab.
std::vector<ListedNeed> list_needs(const Index&, const AddressesInUse&);

} // namespace snug
