#pragma once
// What stands at the head of a document, and whether this program reads it.

#include "core/document/fault.h"

namespace snug::detail {

// Problems that need no parser: size, archives, UTF-16, byte order mark, zero octets.
std::optional<Problem> check_octets(std::string_view bytes, std::string_view file_name);

// What a document calls itself, and the sentences when it is something else. Arguments: foreign {0} newest
// version; other_format {0} its format; newer {0} its version, {1} newest.
struct DocumentForm {
  std::string_view format;
  const Template* not_object = nullptr;
  const Template* foreign = nullptr;
  const Template* other_format = nullptr;
  const Template* newer = nullptr;
};
extern const DocumentForm kLabForm;

// The format version of a document; walks only as far as both header members stand. `oldest` … `newest` are
// read by this program.
Result<std::int64_t> read_version(std::string_view bytes, std::string_view file_name, std::int64_t oldest,
                                  std::int64_t newest, const DocumentForm& form = kLabForm);

// Refuses ill-formed JSON, duplicate keys and too deep nesting in a document of any version.
std::optional<Problem> check_json(std::string_view bytes, std::string_view file_name);

} // namespace snug::detail
