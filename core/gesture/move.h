#pragma once
// What a hand does with machines on the picture, as edits. Every function leaves the lab alone and refuses
// with a sentence that a person sees at the pointer.

#include "core/edit/build.h"

#include <optional>
#include <span>

namespace snug {

class Index;

// Where machines are put down.
struct Spot {
  MachineId carrier;     // none: directly on the PC
  std::int32_t band = 0; // of the carrier; 0 is the first
  MachineId before;      // stands there and steps aside; none: at the end of the band
};

// Moves machines, guests of theirs go along. Refuses a carrier that is no hypervisor, the machine itself or
// inside it. Empty when all stand there already. Disks go along where the new carrier has one place for them,
// see disks_along().
Result<Edit> move_machines(const Lab&, std::span<const MachineId>, const Spot&);
Result<Edit> move_machines(const Index&, std::span<const MachineId>, const Spot&); // of the lab it indexes

// The machines among `ids` that are not inside another of them, in the order of the picture.
std::vector<MachineId> outermost(const Lab&, std::span<const AnyId> ids);

// Guests of a carrier (none: the PC) as the picture shows them: by band, then by order.
std::vector<MachineId> guests_in_order(const Lab&, MachineId carrier);

// Turns machines on or off in an exercise with what that needs (DECISIONS 17): on switches their carriers on,
// off switches their guests off. Refuses without an exercise: everything is on then.
Result<Edit> set_power(const Lab&, ExerciseId, std::span<const MachineId>, bool on);

// Keeps machines in their place, or lets them go where a tidied picture puts them.
Edit hold_in_place(const Lab&, std::span<const MachineId>, bool held);

// Memory in whole steps of 256 MiB, at least one step: what dragging on the ruler gives (DECISIONS 19).
inline constexpr std::int64_t kMemoryStep = 256;
Edit set_memory(const Lab&, MachineId, std::int64_t mib);

} // namespace snug
