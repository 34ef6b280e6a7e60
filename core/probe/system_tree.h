#pragma once
// Small files and folders below one root, read with care. For core/probe only.

#include <charconv>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace snug::system_facts {

class SystemTree {
 public:
  explicit SystemTree(std::filesystem::path root) : root_(std::move(root)) {}

  // The whole regular file at `path` (relative to the root); nothing if it is absent, unreadable, no regular
  // file or larger than 16 MiB.
  std::optional<std::string> text(const std::string& path) const;
  // Its only line, without spaces and line ends around it.
  std::optional<std::string> word(const std::string& path) const;
  std::optional<std::int64_t> number(const std::string& path) const;
  bool exists(const std::string& path) const;
  // Names in a folder, ordered; nothing if there is no such folder. At most 4,096.
  std::optional<std::vector<std::string>> names(const std::string& path) const;
  // The path with all links followed, relative to the root; empty where it leads nowhere or out of the root.
  std::string real(const std::string& path) const;

 private:
  std::filesystem::path root_;
};

// Words between spaces and tabs.
std::vector<std::string_view> words(std::string_view line);
std::vector<std::string_view> lines(std::string_view text);
// What stands after "key" and a colon, trimmed, in the first line that begins so.
std::optional<std::string_view> value_of(std::string_view text, std::string_view key);
// "0-3,8": every number, ordered, each once; nothing if it is damaged or has more than 65,536.
std::optional<std::vector<int>> number_list(std::string_view text);

// The whole text as a number without sign for unsigned types.
template <typename T>
std::optional<T> parse_number(std::string_view text, int base = 10) {
  T value{};
  const char* end = text.data() + text.size();
  const auto parsed = std::from_chars(text.data(), end, value, base);
  if (text.empty() || parsed.ec != std::errc{} || parsed.ptr != end) return std::nullopt;
  return value;
}

} // namespace snug::system_facts
