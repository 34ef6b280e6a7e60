#pragma once
// Disks that go along when their machine moves to another carrier.

#include "core/edit/build.h"
#include "core/model/index.h"

#include <span>

namespace snug {

// What lies on a store of the carrier that its machine leaves moves to the new carrier's store, if exactly
// one has room for all of it. Differences and what they are made from stay, and so does what lies on a share.
struct DisksAlong {
  std::vector<DiskId> disks;
  AnyId store; // none: nothing goes along
};
DisksAlong disks_along(const Index&, std::span<const MachineId>, MachineId to); // none: to the PC

// "disk of tickets-1 goes along, onto disk of deck-b": what an edit has done with the disks of machines.
std::vector<Message> disks_say(const Lab& before, const Lab& after, std::span<const MachineId>);

} // namespace snug
