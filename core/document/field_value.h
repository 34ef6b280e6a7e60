#pragma once
// From JSON scalars to values of fields.

#include "core/model/field.h"

namespace snug::detail {

// Turns text into what the field holds (ids, addresses, dates …); other values stay as they are. The result
// is checked by the caller with check().
Result<Value> field_value(const FieldInfo& field, Value value);
// Why a number that is no int64 (`raw` as written) cannot stand in the field.
Problem number_problem(const FieldInfo& field, std::string_view raw);
// JSON text without blanks outside quotes.
std::string compact(std::string_view json);

} // namespace snug::detail
