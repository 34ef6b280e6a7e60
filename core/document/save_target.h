#pragma once
// Where a save goes, judged before anything is written (POSIX).

#include "core/base/result.h"
#include "core/document/descriptor.h"

#include <string>
#include <sys/types.h>

namespace snug::detail {

struct SaveTarget {
  Descriptor folder;
  std::string folder_name; // for sentences
  std::string name;        // within the folder, links followed
  bool exists = false;
  ::mode_t mode = 0; // of what exists
  ::uid_t owner = 0;
  ::gid_t group = 0;
};
Result<SaveTarget> save_target(const std::string& path);

// `path` with symbolic links at its end followed, existing or not.
Result<std::string> follow_links(const std::string& path);
// Folder and name of a path: "a/b" is {"a", "b"}, "b" is {".", "b"}.
std::pair<std::string, std::string> split_path(const std::string& path);

} // namespace snug::detail
