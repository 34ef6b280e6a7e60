#pragma once
// What one machine uses, and whether it gets it: a line each, for people.

#include "core/reach/promises.h"

namespace snug {

struct CanReach {
  enum class State : std::uint8_t { yes, no, chance, one_way, unknown };
  std::string service;          // as its needs say; empty: the outside
  AnyId to;                     // none: nobody in the lab offers the service
  State state = State::unknown; // unknown: the machine is off, or there is nobody to ask
  Message words;                // where it goes out, or why not
  ReachQuestion question;
};

// Its needs in their order (services that it gives itself left out), then the outside.
std::vector<CanReach> can_reach(Reach&, const Index&, MachineId);

} // namespace snug
