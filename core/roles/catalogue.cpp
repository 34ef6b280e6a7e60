#include "core/roles/catalogue.h"

#include "core/embedded/embedded.h"
#include "core/roles/read_roles.h"

#include <algorithm>
#include <cassert>

namespace snug {

namespace {

const Role* with_key(const std::vector<Role>& roles, std::string_view key) {
  const auto it = std::find_if(roles.begin(), roles.end(), [&](const Role& r) { return r.key == key; });
  return it == roles.end() ? nullptr : &*it;
}

} // namespace

const std::vector<Role>& catalogue() {
  static const std::vector<Role> roles = [] {
    auto read = read_roles(embedded_roles(), "roles.json");
    assert(read.has_value());
    return read ? std::move(*read) : std::vector<Role>{};
  }();
  return roles;
}

const Role* find_role(std::string_view key) { return with_key(catalogue(), key); }

std::vector<Role> extended(std::vector<Role> base, std::vector<Role> own) {
  for (Role& role : own) {
    const auto same =
        std::find_if(base.begin(), base.end(), [&](const Role& r) { return r.key == role.key; });
    if (same == base.end())
      base.push_back(std::move(role));
    else
      *same = std::move(role);
  }
  return base;
}

RoleId use_role(EditBuilder& edit, const Role& role) {
  if (const Role* there = with_key(edit.lab().roles, role.key)) return there->id;
  Role copy = role;
  for (Need& need : copy.needs) need.from = {};
  return edit.add(std::move(copy));
}

Machine machine_from(const Role& role, SizeSet sizes) {
  Machine m;
  m.role = role.id;
  m.memory = std::max<std::int64_t>(1, sizes == SizeSet::lean ? role.lean_usual : role.current_usual);
  m.processors = role.processors;
  m.expose_virtualization = role.is_hypervisor;
  return m;
}

} // namespace snug
