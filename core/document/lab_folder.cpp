#include "core/document/lab_folder.h"

#include "core/base/quote.h"

#include <algorithm>
#include <filesystem>

namespace snug {

namespace {

namespace fs = std::filesystem;
constexpr std::string_view kEnding = ".snuglab";

std::string file_stem(std::string_view name, std::string_view otherwise) {
  std::string out;
  for (const char c : name) {
    if (is_letter(c) || is_digit(c))
      out += lower(c);
    else if (!out.empty() && out.back() != '-')
      out += '-';
  }
  constexpr std::size_t kMost = 60;
  out.resize(std::min(out.size(), kMost));
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out.empty() ? std::string(otherwise) : out;
}

} // namespace

std::vector<std::string> lab_files(const std::string& folder, std::size_t most) {
  std::vector<std::string> files;
  std::error_code error;
  if (folder.empty() || !fs::is_directory(folder, error)) return files;
  for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
    const std::string name = at->path().filename().string();
    if (name.front() != '.' && name.ends_with(kEnding)) files.push_back(at->path().string());
  }
  std::sort(files.begin(), files.end());
  files.resize(std::min(files.size(), most));
  return files;
}

std::string free_lab_file(const std::string& folder, std::string_view name, std::string_view otherwise) {
  const std::string stem = folder + '/' + file_stem(name, otherwise);
  std::error_code ignored;
  const auto is_taken = [&](const std::string& path) {
    return fs::symlink_status(path, ignored).type() != fs::file_type::not_found;
  };
  std::string path = stem + std::string(kEnding);
  for (int n = 2; is_taken(path); ++n) path = stem + '-' + std::to_string(n) + std::string(kEnding);
  return path;
}

} // namespace snug
