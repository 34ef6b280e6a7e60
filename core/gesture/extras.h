#pragma once
// What a plan has beside machines and rails, as edits: exercises, physical LANs, volumes, places.

#include "core/base/size.h"
#include "core/gesture/add.h"

namespace snug {

// A new one with a free name; what is not said here is at its default.
Added add_exercise(const Lab&, ExerciseId like = {}); // the same machines are on; like none: all
Added add_lan(const Lab&);
inline constexpr std::int64_t kNewVolume = 256 * kMibPerGib;
Added add_volume(const Lab&); // of this size, empty, until somebody says what it is
Added add_place(const Lab&);

} // namespace snug
