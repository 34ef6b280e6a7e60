#pragma once
// New things on the picture, as edits.

#include "core/gesture/move.h"

namespace snug {

// An edit and what it makes, to be selected.
struct Added {
  Edit edit;
  AnyId id;
};

// A machine of a role in its usual size, with one disk of the role's size (on the PC: on the first volume; in
// a hypervisor: on that one's first disk), on in `current` and with what that needs (DECISIONS 17). With a
// segment it has one card there, see add_card; in a hypervisor without one, on the segment that this carries
// and most of its guests are on.
Result<Added> add_machine(const Lab&, const Role&, const Spot&, ExerciseId current = {},
                          SegmentId plugged = {});
// Several of them at the same place, side by side. `count` is in 1 … kMostAtOnce.
struct AddedMachines {
  Edit edit;
  std::vector<MachineId> ids;
};
inline constexpr int kMostAtOnce = 50;
Result<AddedMachines> add_machines(const Lab&, const Role&, int count, const Spot&, ExerciseId current = {},
                                   SegmentId plugged = {});
// At the end of the rails; isolated and NAT ones get a prefix from the numbering scheme where one is free,
// bridged and NAT ones lead to the first physical LAN.
Added add_segment(const Lab&, SegmentKind);
// Copies of machines beside them, with their cards and disks; suggested addresses are suggested anew, derived
// MACs follow the card, typed addresses are not copied. Guests inside are copied too. On wherever the
// original is on.
Result<Added> duplicate(const Lab&, std::span<const MachineId>);

} // namespace snug
