#pragma once
// A PDF that says nothing of when it was made, so that the same lab gives the same bytes (RELIABILITY row
// 19).

#include <string>

namespace snug {

// Takes the entry CreationDate out of the information dictionary, where it is optional (ISO 32000-1, 14.3.3),
// and moves what the cross-reference table (7.5.4) says behind it. For files of one section, with a table;
// any other comes back as it is.
std::string without_creation_date(std::string pdf);

} // namespace snug
