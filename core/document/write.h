#pragma once
// Writing `*.snuglab` documents.

#include "core/model/lab.h"

#include <string>

namespace snug {

// The document of a lab in the current version: keys in the order of the tables, members at their default and
// empty lists left out, singletons one member a line, elements one a line, unknown members last; LF, a final
// line break. The same lab gives the same octets everywhere; read_lab gives an equal lab back as long as the
// lab is one that read_lab accepts.
std::string write_lab(const Lab&);

} // namespace snug
