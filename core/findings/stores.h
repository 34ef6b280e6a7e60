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
// A machine that has a disk on a share; both are places.
struct ShareUser {
  std::uint32_t machine = kNowhere;
  std::uint32_t share = kNowhere;
  friend auto operator<=>(const ShareUser&, const ShareUser&) = default;
};
// Each pair once, in the order of machines, then of shares.
std::vector<ShareUser> share_users(const Index&);
// Who opens a disk on a share: the hypervisor that carries its machine, or a guest on the PC itself. Places.
std::uint32_t opener(const Index&, std::uint32_t machine);
// Its name without that of its machine.
std::string share_name(const Context&, const Share&);

} // namespace snug
