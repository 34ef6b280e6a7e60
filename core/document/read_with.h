#pragma once
// The reader with other steps of migration than the program's own (for tests of the frame) or for documents
// of another form that hold elements of a lab (files of roles).

#include "core/document/header.h"
#include "core/document/migrate.h"
#include "core/document/read.h"

namespace snug::detail {

Result<Loaded> read_with(std::string_view bytes, std::string_view file_name, std::span<const Migration> steps,
                         const DocumentForm& form = kLabForm);

} // namespace snug::detail
