#include "core/probe/system_tree.h"

#include "core/base/quote.h"

#include <algorithm>
#include <fstream>

namespace snug::system_facts {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t kMostBytes = 16U << 20U;
constexpr std::size_t kMostNames = 4096;
constexpr std::size_t kMostNumbers = 65536;

std::vector<std::string_view> split(std::string_view text, std::string_view at, bool keep_empty) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(at), text.size());
    if (end > 0 || keep_empty) out.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
}

} // namespace

std::optional<std::string> SystemTree::text(const std::string& path) const {
  const fs::path file = root_ / path;
  std::error_code error;
  if (!fs::is_regular_file(file, error)) return std::nullopt;
  std::ifstream in(file, std::ios::binary);
  std::string out;
  std::string part(65536, '\0');
  while (in.read(part.data(), static_cast<std::streamsize>(part.size())) || in.gcount() > 0) {
    out.append(part, 0, static_cast<std::size_t>(in.gcount()));
    if (out.size() > kMostBytes) return std::nullopt;
  }
  if (in.bad() || !in.eof()) return std::nullopt;
  return out;
}

std::optional<std::string> SystemTree::word(const std::string& path) const {
  const auto whole = text(path);
  if (!whole) return std::nullopt;
  const std::string_view line = trimmed(*whole);
  if (line.empty() || line.find_first_of(std::string_view("\n\0", 2)) != std::string_view::npos)
    return std::nullopt;
  return std::string(line);
}

std::optional<std::int64_t> SystemTree::number(const std::string& path) const {
  const auto found = word(path);
  return found ? parse_number<std::int64_t>(*found) : std::nullopt;
}

bool SystemTree::exists(const std::string& path) const {
  std::error_code error;
  return fs::exists(root_ / path, error);
}

std::optional<std::vector<std::string>> SystemTree::names(const std::string& path) const {
  std::error_code error;
  fs::directory_iterator at(root_ / path, error);
  if (error) return std::nullopt;
  std::vector<std::string> out;
  for (; at != fs::directory_iterator() && out.size() < kMostNames; at.increment(error)) {
    if (error) return std::nullopt;
    out.push_back(at->path().filename().string());
  }
  std::sort(out.begin(), out.end());
  return out;
}

std::string SystemTree::real(const std::string& path) const {
  std::error_code error;
  const fs::path top = fs::canonical(root_, error);
  if (error) return {};
  const fs::path whole = fs::canonical(root_ / path, error);
  if (error) return {};
  const fs::path inside = whole.lexically_relative(top);
  return inside.empty() || *inside.begin() == ".." ? std::string() : inside.generic_string();
}

std::vector<std::string_view> words(std::string_view line) { return split(line, " \t\r", false); }
std::vector<std::string_view> lines(std::string_view text) { return split(text, "\n", true); }

std::optional<std::string_view> value_of(std::string_view text, std::string_view key) {
  for (const std::string_view line : lines(text)) {
    const std::size_t colon = line.find(':');
    if (colon != std::string_view::npos && trimmed(line.substr(0, colon)) == key)
      return trimmed(line.substr(colon + 1));
  }
  return std::nullopt;
}

std::optional<std::vector<int>> number_list(std::string_view text) {
  std::vector<int> out;
  for (const std::string_view range : split(trimmed(text), ",", true)) {
    const std::size_t dash = range.find('-');
    const auto first = parse_number<int>(range.substr(0, dash));
    const auto last = dash == std::string_view::npos ? first : parse_number<int>(range.substr(dash + 1));
    if (!first || !last || *first < 0 || *last < *first) return std::nullopt;
    if (static_cast<std::size_t>(*last - *first) >= kMostNumbers - out.size()) return std::nullopt;
    for (int n = *first; n <= *last; ++n) out.push_back(n);
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  if (out.empty()) return std::nullopt;
  return out;
}

} // namespace snug::system_facts
