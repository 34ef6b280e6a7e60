#pragma once
// What fails when machines, cards or segments are off.

#include "core/model/lab.h"
#include "core/reach/reach.h"

namespace snug {

struct LostPair {
  AnyId from, to; // machine or PC; to: also the outside
  Reached before = Reached::reaches, after = Reached::does_not_reach;
};
struct LostNeed {
  MachineId who;
  std::string service;
  AnyId from; // who it came from; none: nobody in particular
  bool must = false;
};
struct WhatIf {
  std::vector<MachineId>
      off; // machines that stop: those named and the guests inside them, in the lab's order
  std::vector<LostPair> pairs;     // that reached each other, both still on
  std::vector<PromiseId> promises; // kept before, broken then
  std::vector<LostNeed> needs;     // of machines still on, met before
};

// `off`: machines, cards, segments of the index's lab.
WhatIf what_if(const Index&, const AddressesInUse&, ExerciseId exercise, std::span<const AnyId> off);

} // namespace snug
