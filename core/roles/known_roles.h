#pragma once
// The catalogue together with a person's own roles.

#include "core/model/machine.h"

#include <string>
#include <vector>

namespace snug {

// $XDG_CONFIG_HOME/snuglab/roles.json, else ~/.config/snuglab/roles.json (XDG Base Directory Specification);
// empty where neither is known.
std::string own_roles_file();
// The catalogue, extended by the file where there is one (see extended() and read_roles()).
Result<std::vector<Role>> known_roles(const std::string& file);

} // namespace snug
