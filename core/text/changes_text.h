#pragma once
// How the list of changes says where a machine stands.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template changes_place{"changes-place", "place"};
inline constexpr Template changes_first{"changes-first", "first"};
inline constexpr Template changes_after{"changes-after", "after {0}"};
inline constexpr Template changes_new_row{"changes-new-row", "first of row {0}"};

} // namespace snug::text
