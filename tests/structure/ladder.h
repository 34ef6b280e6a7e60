#pragma once
// The ladder of folders, read from the table of DEVELOPERS.md, and what the include lines say against it.

#include <filesystem>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace snug::structure {

struct Rung {
  std::string folder;            // "core/net", "ui"
  std::set<std::string> may_use; // folders as in `folder`; "core" stands for everything below core/
  friend bool operator==(const Rung&, const Rung&) = default;
};

// The rows "| `core/net` | purpose | `base`, `text` |" between the heading "## Ladder" and the next heading.
// A bare name in the last column means the folder of that name in core/, when the table has one.
std::vector<Rung> read_ladder(std::string_view markdown);

struct Include {
  std::string file; // from the root of the project: "core/net/mac.cpp"
  int line = 0;
  std::string target; // what stands between the quotes or angles
  bool quoted = false;
};

std::vector<Include> includes_in(std::string_view file, std::string_view source);

// The rung of a file: the longest folder that holds it; nullptr when none does.
const Rung* rung_of(const std::vector<Rung>&, std::string_view file);

// A sentence when the include breaks the ladder or the rule that core knows no Qt and no library but
// nlohmann_json and tl::expected; empty when it is fine.
std::string complaint(const std::vector<Rung>&, const Include&);

std::string read_file(const std::filesystem::path&);
// Sources and headers under `folder` of the project, as paths from its root, sorted.
std::vector<std::string> code_under(const std::filesystem::path& root, std::string_view folder);

} // namespace snug::structure
