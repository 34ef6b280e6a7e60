#pragma once
// A person's own parts: machines with all that belongs to them, kept for other labs. Each is a document of
// its own in one folder, so that a damaged one hurts no other; its title is the part's name.

#include "core/base/result.h"
#include "core/model/lab.h"

#include <string>
#include <vector>

namespace snug {

struct OwnPart {
  std::string file; // path
  Lab lab;          // at least one machine
  const std::string& name() const { return lab.facts.title; }
};
struct OwnParts {
  std::vector<OwnPart> parts;    // by name
  std::vector<Problem> problems; // of files that were left out, which stay as they are
};

// $XDG_CONFIG_HOME/snuglab/parts, else ~/.config/snuglab/parts; empty where neither is known.
std::string own_parts_folder();
// Reads what is there; nothing where there is no such folder. At most kMostParts files.
inline constexpr std::size_t kMostParts = 200;
OwnParts own_parts(const std::string& folder);

// Writes a new file by the one save routine; the lab's title is the name. Makes the folder where it is
// missing. Refuses an empty name, one that another part has, and a folder that cannot be written.
Result<OwnPart> keep_part(const std::string& folder, Lab lab);
Result<OwnPart> rename_part(const std::string& folder, const OwnPart&, std::string_view name);
// The file goes; what is read of it is enough for bring_back().
Result<void> remove_part(const OwnPart&);
// Under another file name where its own has been taken meanwhile.
Result<OwnPart> bring_back(const std::string& folder, const OwnPart&);

} // namespace snug
