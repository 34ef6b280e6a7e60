#pragma once
// Documents in a folder of a person's own: parts, starting labs.

#include <string>
#include <string_view>
#include <vector>

namespace snug {

// Paths of its *.snuglab that are not hidden, sorted, at most `most`; nothing where there is no such folder.
std::vector<std::string> lab_files(const std::string& folder, std::size_t most);

// A path in the folder that nothing has yet: "Web pair" gets web-pair.snuglab, then web-pair-2.snuglab. ASCII
// letters and digits stand in it; where a name has none, `otherwise` does.
std::string free_lab_file(const std::string& folder, std::string_view name, std::string_view otherwise);

} // namespace snug
