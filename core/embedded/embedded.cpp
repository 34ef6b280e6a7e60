#include "core/embedded/embedded.h"

#include <algorithm>

namespace snug {

std::span<const EmbeddedFile> embedded_samples() { return detail::embedded_files().subspan(1); }

const EmbeddedFile* find_sample(std::string_view name) {
  const auto all = embedded_samples();
  const auto it = std::find_if(all.begin(), all.end(), [&](const EmbeddedFile& f) { return f.name == name; });
  return it == all.end() ? nullptr : &*it;
}

std::string_view embedded_roles() { return detail::embedded_files().front().bytes; }

} // namespace snug
