#include "core/roles/known_roles.h"

#include "core/document/read.h"
#include "core/roles/catalogue.h"
#include "core/roles/read_roles.h"

#include <cstdlib>
#include <filesystem>

namespace snug {

std::string own_roles_file() {
  const char* config = std::getenv("XDG_CONFIG_HOME");
  if (config && *config == '/') return std::string(config) + "/snuglab/roles.json"; // relative ones are void
  const char* home = std::getenv("HOME");
  return home && *home ? std::string(home) + "/.config/snuglab/roles.json" : std::string();
}

Result<std::vector<Role>> known_roles(const std::string& file) {
  std::error_code ignored;
  if (file.empty() || !std::filesystem::exists(file, ignored)) return catalogue();
  const auto bytes = read_file(file);
  if (!bytes) return tl::unexpected(bytes.error());
  auto own = read_roles(*bytes, file);
  if (!own) return own;
  return extended(catalogue(), std::move(*own));
}

} // namespace snug
