#pragma once
// The reader with other steps of migration than the program's own: for tests of the frame.

#include "core/document/migrate.h"
#include "core/document/read.h"

namespace snug::detail {

Result<Loaded> read_with(std::string_view bytes, std::string_view file_name,
                         std::span<const Migration> steps);

} // namespace snug::detail
