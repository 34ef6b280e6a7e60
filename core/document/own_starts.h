#pragma once
// Labs that a person keeps to start from: documents in one folder, which are only read. Each is offered under
// its title, else under its file's name; a damaged one hurts no other.

#include "core/base/result.h"
#include "core/model/lab.h"

#include <string>
#include <vector>

namespace snug {

struct OwnStart {
  std::string file; // path
  Lab lab;          // its title is never empty
  const std::string& name() const { return lab.facts.title; }
};
struct OwnStarts {
  std::vector<OwnStart> starts;  // by name
  std::vector<Problem> problems; // of files that were left out, which stay as they are
};

// Reads what is there; nothing where there is no such folder. At most kMostStarts files.
inline constexpr std::size_t kMostStarts = 100;
OwnStarts own_starts(const std::string& folder);

// The one that has this name, letters large or small; null: none.
const OwnStart* start_named(const OwnStarts&, std::string_view name);

enum class IfTaken : std::uint8_t { refuse, replace };
// Writes the lab by the one save routine, its title being the name: a new file, or that of the start which
// has the name. Makes the folder where it is missing. Refuses an empty name, one longer than titles are, a
// name that is taken, and a folder that cannot be written.
Result<OwnStart> keep_start(const std::string& folder, Lab lab, IfTaken = IfTaken::refuse);

} // namespace snug
