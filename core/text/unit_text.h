#pragma once
// Numbers with their units (IEC 80000-13 for sizes) and lists.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template unit_mib{"unit-mib", "{0} MiB"};
inline constexpr Template unit_gib{"unit-gib", "{0} GiB"};
inline constexpr Template unit_seconds{"unit-seconds", "{0} s"};
inline constexpr Template unit_minutes{"unit-minutes", "{0} min"};
inline constexpr Template unit_percent{"unit-percent", "{0} %"};
inline constexpr Template list_more{"list-more", "{0}, {1}"};
inline constexpr Template list_last{"list-last", "{0} and {1}"};

} // namespace snug::text
