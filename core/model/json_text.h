#pragma once
// JSON text of the model's structs, straight from the field tables (no document tree in between).

#include "core/model/field.h"

#include <string>
#include <string_view>

namespace snug {

// A JSON string with quotes; control characters, quote and backslash escaped; other UTF-8 as it is.
// Ill-formed UTF-8 is replaced by U+FFFD.
void append_json_string(std::string& out, std::string_view utf8);
// {"key": value, …} in the order of the table: the id first where there is one, then fields that are not at
// their default, then unknown members.
void append_json_object(std::string& out, const StructInfo& table, const void* object);

// A field's value as the document writes it; "null" for one that is not set. Rows leave out what is at its
// default.
void append_json_value(std::string& out, const FieldInfo& field, const Value& value);

} // namespace snug
