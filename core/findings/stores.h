#pragma once
// Questions about where disks lie.

#include "core/findings/context.h"

namespace snug {

// The disk that a disk's store lies on: the store itself, or the disk that holds the share; kNowhere: a
// volume, or nothing. Places in lab.disks.
std::uint32_t disk_below(const Index&, std::uint32_t disk);
// The volume that everything below a disk ends on, through shares and hypervisors' disks; kNowhere: none.
std::uint32_t volume_below(const Index&, std::uint32_t disk);
// The one store that a disk of this machine can lie on: the lab's only volume, the hypervisor's only disk.
// None when there are several or there is nothing.
AnyId only_store_for(const Index&, std::uint32_t machine);

} // namespace snug
