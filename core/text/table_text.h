#pragma once
// Words in the cells of tables.

#include "core/base/message.h"

namespace snug::text {

inline constexpr Template table_names_by{"table-names-by", "{0} by {1}"};
inline constexpr Template table_names_routed{"table-names-routed", "{0}, over routers"};
inline constexpr Template table_names_itself{"table-names-itself", "itself"};
inline constexpr Template table_names_nobody{"table-names-nobody", "none: nobody it reaches offers names"};
inline constexpr Template table_names_dhcp{"table-names-dhcp", "by DHCP"};

} // namespace snug::text
