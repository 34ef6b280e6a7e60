#pragma once
// Rows and list items that a person adds, filled so that they make sense at once.

#include "core/edit/build.h"
#include "core/gesture/add.h"

namespace snug {

// What a new item of a list field is, of an element that exists: a segment that is not named yet, the next
// free address (suggested), the scheme's DHCP range, the default route by the card's gateway; else every
// field at its default. Refused where nothing is left to be named.
Result<Value> new_item(const Lab&, AnyId owner, const FieldInfo& list);

// An element that belongs to another: a disk of a machine (in the usual size, where its other disks lie), a
// card (not plugged), a share (what is left of the machine's first disk).
Added add_disk(const Lab&, MachineId);
Added add_loose_card(const Lab&, MachineId);
Added add_share(const Lab&, MachineId);

} // namespace snug
