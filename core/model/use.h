#pragma once
// Which fields say anything about an element as it is.

#include "core/model/field.h"
#include "core/model/lab.h"

namespace snug {

// False: nothing reads it while the element is of its present type, such as the translator's address of a
// segment that does not translate. What stands in it is kept.
bool is_used(const Lab&, AnyId, const FieldInfo&);

} // namespace snug
