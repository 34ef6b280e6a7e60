#include "core/roles/own_parts.h"

#include "core/base/quote.h"
#include "core/document/lab_folder.h"
#include "core/document/read.h"
#include "core/document/save.h"
#include "core/document/write.h"
#include "core/net/host_name.h"
#include "core/text/own_parts_text.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>

namespace snug {

namespace {

namespace fs = std::filesystem;
constexpr std::string_view kBare = "part"; // file of a name without ASCII letters

Result<OwnPart> read_part(const std::string& path) {
  const auto bytes = read_file(path);
  if (!bytes) return fail(bytes.error());
  auto lab = read_lab(*bytes, path);
  if (!lab) return fail(std::move(lab.error()));
  if (lab->machines.empty()) return fail(text::own_part_empty, path);
  if (lab->facts.title.empty()) lab->facts.title = fs::path(path).stem().string();
  return OwnPart{path, std::move(*lab)};
}

Result<void> check_name(const std::string& folder, std::string_view name, const std::string& own_file) {
  if (name.empty()) return fail(text::own_part_no_name);
  for (const OwnPart& other : own_parts(folder).parts)
    if (other.file != own_file && same_name(other.name(), name))
      return fail(text::own_part_same_name, other.name());
  return {};
}

Result<OwnPart> write_part(const std::string& folder, OwnPart part) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) return fail(text::own_part_folder, folder);
  const auto saved = save_file(part.file, write_lab(part.lab));
  if (!saved) return fail(saved.error());
  return part;
}

} // namespace

std::string own_parts_folder() {
  const char* config = std::getenv("XDG_CONFIG_HOME");
  if (config && *config == '/') return std::string(config) + "/snuglab/parts"; // relative ones are void
  const char* home = std::getenv("HOME");
  return home && *home ? std::string(home) + "/.config/snuglab/parts" : std::string();
}

OwnParts own_parts(const std::string& folder) {
  OwnParts out;
  for (const std::string& path : lab_files(folder, kMostParts)) {
    auto part = read_part(path);
    if (part)
      out.parts.push_back(std::move(*part));
    else
      out.problems.push_back(std::move(part.error()));
  }
  std::stable_sort(out.parts.begin(), out.parts.end(),
                   [](const OwnPart& a, const OwnPart& b) { return a.name() < b.name(); });
  return out;
}

Result<OwnPart> keep_part(const std::string& folder, Lab lab) {
  if (folder.empty()) return fail(text::own_part_no_folder);
  lab.facts.title = std::string(trimmed(lab.facts.title));
  if (const auto ok = check_name(folder, lab.facts.title, {}); !ok) return fail(ok.error());
  std::string file = free_lab_file(folder, lab.facts.title, kBare);
  return write_part(folder, {std::move(file), std::move(lab)});
}

Result<OwnPart> rename_part(const std::string& folder, const OwnPart& part, std::string_view name) {
  OwnPart renamed = part;
  renamed.lab.facts.title = std::string(trimmed(name));
  if (const auto ok = check_name(folder, renamed.name(), part.file); !ok) return fail(ok.error());
  return write_part(folder, std::move(renamed));
}

Result<void> remove_part(const OwnPart& part) {
  std::error_code error;
  fs::remove(part.file, error); // one that is gone is gone
  if (error) return fail(text::own_part_stays, part.name(), error.message());
  return {};
}

Result<OwnPart> bring_back(const std::string& folder, const OwnPart& part) {
  OwnPart back = part;
  std::error_code ignored;
  if (fs::exists(back.file, ignored)) back.file = free_lab_file(folder, back.name(), kBare);
  return write_part(folder, std::move(back));
}

} // namespace snug
