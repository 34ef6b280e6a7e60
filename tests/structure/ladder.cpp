#include "tests/structure/ladder.h"

#include <algorithm>
#include <fstream>
#include <regex>
#include <sstream>

namespace snug::structure {

namespace {

std::vector<std::string> lines_of(std::string_view text) {
  std::istringstream in{std::string(text)};
  std::vector<std::string> out;
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}

std::vector<std::string> code_spans(const std::string& cell) {
  static const std::regex span("`([^`]+)`");
  std::vector<std::string> out;
  for (std::sregex_iterator it(cell.begin(), cell.end(), span), end; it != end; ++it) out.push_back((*it)[1]);
  return out;
}

bool holds(const std::string& folder, std::string_view path) {
  return path == folder || (path.starts_with(folder) && path.substr(folder.size()).starts_with('/'));
}

std::string folder_of(std::string_view path) {
  const auto slash = path.rfind('/');
  return std::string(slash == std::string_view::npos ? std::string_view{} : path.substr(0, slash));
}

bool core_may_include(std::string_view target) {
  static const std::regex qt("Q[A-Zt].*");
  if (std::regex_match(std::string(target), qt)) return false;
  if (target.find('/') == std::string_view::npos) return true; // the standard library and POSIX
  static const std::set<std::string> kLibraries{"nlohmann", "tl", "sys", "net", "netinet", "arpa", "linux"};
  return kLibraries.contains(std::string(target.substr(0, target.find('/'))));
}

} // namespace

std::vector<Rung> read_ladder(std::string_view markdown) {
  std::vector<Rung> rungs;
  bool inside = false;
  for (const std::string& line : lines_of(markdown)) {
    if (line.starts_with("## ")) inside = line == "## Ladder";
    static const std::regex row(R"(\|\s*`([^`]+)`\s*\|.*\|([^|]*)\|\s*)");
    std::smatch parts;
    if (!inside || !std::regex_match(line, parts, row)) continue;
    const std::vector<std::string> names = code_spans(parts[2]);
    rungs.push_back({parts[1], {names.begin(), names.end()}});
  }
  for (Rung& rung : rungs) {
    std::set<std::string> full;
    for (const std::string& name : rung.may_use) {
      const bool in_core =
          std::any_of(rungs.begin(), rungs.end(), [&](const Rung& r) { return r.folder == "core/" + name; });
      full.insert(in_core ? "core/" + name : name);
    }
    rung.may_use = std::move(full);
  }
  return rungs;
}

std::vector<Include> includes_in(std::string_view file, std::string_view source) {
  static const std::regex form(R"re(\s*#\s*include\s*(["<])([^">]+)[">].*)re");
  std::vector<Include> out;
  int number = 0;
  for (const std::string& line : lines_of(source)) {
    ++number;
    std::smatch parts;
    if (std::regex_match(line, parts, form))
      out.push_back({std::string(file), number, parts[2], parts[1] == "\""});
  }
  return out;
}

const Rung* rung_of(const std::vector<Rung>& rungs, std::string_view file) {
  const Rung* best = nullptr;
  for (const Rung& rung : rungs)
    if (holds(rung.folder, file) && (best == nullptr || rung.folder.size() > best->folder.size()))
      best = &rung;
  return best;
}

std::string complaint(const std::vector<Rung>& rungs, const Include& include) {
  const std::string where = include.file + ":" + std::to_string(include.line) + ": ";
  if (!include.quoted) {
    if (!include.file.starts_with("core/") || core_may_include(include.target)) return {};
    return where + "core may not include <" + include.target + ">";
  }
  if (include.target.ends_with(".moc")) return {};
  const Rung* from = rung_of(rungs, include.file);
  const Rung* to = rung_of(rungs, include.target);
  if (from == nullptr) return where + "the folder is not in the ladder of DEVELOPERS.md";
  if (to == nullptr)
    return where + "\"" + include.target + "\" is no path from the project's root to a folder of the ladder";
  if (from == to) return {};
  for (const std::string& allowed : from->may_use)
    if (holds(allowed, folder_of(include.target))) return {};
  return where + from->folder + " may not use " + to->folder + " (" + include.target + ")";
}

std::string read_file(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

std::vector<std::string> code_under(const std::filesystem::path& root, std::string_view folder) {
  std::vector<std::string> out;
  if (!std::filesystem::exists(root / folder)) return out;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
    const std::string kind = entry.path().extension().string();
    if (entry.is_regular_file() && (kind == ".cpp" || kind == ".h"))
      out.push_back(entry.path().lexically_relative(root).generic_string());
  }
  std::sort(out.begin(), out.end());
  return out;
}

} // namespace snug::structure
