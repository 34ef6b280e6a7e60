#pragma once
// How labels of edits speak of what they touch.

#include "core/model/store.h"

#include <span>
#include <string>

namespace snug {

// The name of one, else "3 machines".
std::string names_of(const Lab&, std::span<const MachineId>);
// "New segment", "New segment 2", …: `wanted`, or the first with a number that no element of the kind has.
std::string free_name(const Lab&, Kind, const std::string& wanted);

} // namespace snug
