#pragma once
// Files of the repository that are inside the program, so that it finds them wherever it is started.

#include <span>
#include <string_view>

namespace snug {

struct EmbeddedFile {
  std::string_view name; // without folder and ending: "skerry-ferries"
  std::string_view bytes;
};

// samples/*.snuglab, the main sample first, the others by name.
std::span<const EmbeddedFile> embedded_samples();
// The sample of this name; nullptr: there is none.
const EmbeddedFile* find_sample(std::string_view name);
// resources/roles/roles.json
std::string_view embedded_roles();

namespace detail {
std::span<const EmbeddedFile>
embedded_files(); // made by core/embedded/embed.cmake: the roles, then the samples
}

} // namespace snug
