#pragma once
// The catalogue of roles (resources/roles/roles.json) and roles of a person's own.

#include "core/edit/build.h"

#include <string_view>
#include <vector>

namespace snug {

// The catalogue in the order of the parts list. All sizes and times are common practice, no published source.
const std::vector<Role>& catalogue();
// The first of the catalogue are large in the parts list, the rest stand one step behind (JOB: simple first).
inline constexpr std::size_t kLargeRoles = 5;
// The role of the catalogue with this key; nullptr: there is none.
const Role* find_role(std::string_view key);

// `base` with `own`: a role with the key of one in `base` takes its place, others follow at the end.
std::vector<Role> extended(std::vector<Role> base, std::vector<Role> own);

// The id of the lab's role with the key of `role`, which is copied into the lab if it has none (DECISIONS
// 11).
RoleId use_role(EditBuilder& edit, const Role& role);
// A machine of the usual size for the role, without name, carrier and cards. Its role is `role.id`: give the
// lab's role, not the catalogue's.
Machine machine_from(const Role& role, SizeSet sizes);

} // namespace snug
