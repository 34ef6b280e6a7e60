#pragma once
// Descriptions of the document, made from the field tables.

#include <string>

namespace snug {

// JSON Schema (draft 2020-12) of the current version; committed as resources/schema/snuglab-1.schema.json. It
// lets through what the reader refuses for reasons that a schema cannot say: references to nothing, circles,
// ids given twice, sums.
std::string json_schema();

// Every member of the document on one Markdown page: type, range, default, meaning.
std::string format_page();

} // namespace snug
