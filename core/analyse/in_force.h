#pragma once
// What counts where a person typed nothing.

#include "core/analyse/analyse.h"
#include "core/model/field.h"

namespace snug {

// The value that holds instead of an empty field, worked out from roles, segments and the PC, in the field's
// unit; none: nothing does, or the field is not empty.
std::optional<Value> in_force(const Analysis&, AnyId, const FieldInfo&);

} // namespace snug
