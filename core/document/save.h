#pragma once
// The one routine that writes files: documents and exports (RELIABILITY 1 and rows 1 to 4 of the design).

#include "core/base/result.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace snug {

struct SaveOptions {
  bool keep_previous = false; // the version before stays beside it as NAME~
  // Of what was loaded: a file that has another content now was changed by another program and is not
  // overwritten. A file that is gone is written anew.
  std::optional<std::uint64_t> loaded_hash = std::nullopt;
};
struct Saved {
  bool previous_kept = false; // false too where there was none, or where the folder does not allow it
};

// Writes the whole file or leaves the old one as it was: everything goes into an unnamed file of the same
// folder (or NAME.saving-… where the file system has none), is forced to the disk, takes the name, and the
// folder is forced to the disk. Symbolic links are followed; permission bits are kept, the owner where the
// system allows it; hard links are not. Refused with a sentence: a read-only file, a folder, a pipe or
// device, a folder that is missing or may not be written, a full disk. A process that is killed may leave
// .NAME.saving, a whole document, which the next save takes away. A process that sets no limit for itself but
// runs under one (ulimit -f) must ignore SIGXFSZ to get the sentence. Never throws.
Result<Saved> save_file(const std::string& path, std::string_view bytes, SaveOptions options = {});

} // namespace snug
