#pragma once
// Where on a drawing machines would be put down.

#include "core/gesture/move.h"
#include "core/layout/drawing.h"

#include <QPointF>

#include <unordered_map>

namespace snug {

// Equal for equal spots.
std::uint64_t key_of(const Spot&);

class SpotFinder {
 public:
  // `moved`: what is in the hand; never a target, and neither are its guests.
  SpotFinder(const Lab& lab, std::span<const MachineId> moved);

  // In the innermost hypervisor under the pointer, else on the PC, before the first neighbour whose middle is
  // right of the pointer or that stands in a row below it.
  Spot at(const Drawing&, QPointF) const;
  // A machine on the PC that takes no guests, with the pointer of a hand from a room over its middle: the
  // person wants it to run inside. In a room what is put down stands beside the guests.
  MachineId plain_under(const Drawing&, QPointF) const;

 private:
  struct Facts {
    MachineId carrier;
    std::int32_t band = 0;
    bool hypervisor = false;
    bool in_hand = false;
  };
  const Facts* facts(AnyId) const;
  std::unordered_map<std::uint32_t, Facts> machines_;
  MachineId from_;
};

} // namespace snug
