#pragma once
// One field of several elements at once.

#include "core/edit/build.h"

#include <span>

namespace snug {

// Sets a field of all of them, which are of the kind that has it. A new carrier goes through move_machines,
// so that it is refused with the same words.
Result<Edit> set_fields(const Lab&, std::span<const AnyId> ids, const FieldInfo& field, const Value& value);

} // namespace snug
