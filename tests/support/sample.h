#pragma once
// The samples of the repository and the findings expected of them.

#include "core/analyse/analyse.h"

#include <string>
#include <vector>

namespace snug::test {

// The sample of this name, read; a failure of the running test and an empty lab when it cannot be read.
Lab sample(std::string_view name);
// A sample under another title.
Lab titled(std::string title, std::string_view from = "skerry-ferries");
// All of them, the main one first.
std::vector<std::string_view> sample_names();
// A failure of the running test when there is none of that name.
const Machine& machine(const Lab&, std::string_view name);
ExerciseId exercise(const Lab&, std::string_view name);

// "error address-twice c36 c41 | always": one line a finding, places in the order of ids, lines sorted.
std::vector<std::string> findings_found(const Analysis&);
// The same form from samples/expected/NAME.findings (samples/expected/README.md).
std::vector<std::string> findings_expected(std::string_view name);

} // namespace snug::test
