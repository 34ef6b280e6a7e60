#pragma once
// Files of roles: the catalogue's and a person's own.

#include "core/model/machine.h"

#include <string_view>
#include <vector>

namespace snug {

// A file of roles: one JSON object with "format": "snuglab-roles", "version": 1 and "roles", a list with the
// members that roles have in a document. Refused, with file, line, column and path: what a document would be
// refused for, members that are no roles, a role without key or title, a key given twice, and memory marks
// that do not grow from refused below to least to usual.
Result<std::vector<Role>> read_roles(std::string_view bytes, std::string_view file_name);

} // namespace snug
