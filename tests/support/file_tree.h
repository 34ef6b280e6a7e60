#pragma once
// A folder full of files for one test, from a description; gone when the test ends.

#include <filesystem>
#include <string>
#include <string_view>

namespace snug::test {

class FileTree {
 public:
  FileTree(); // empty
  // Lines "path = content" (\n and \t in content stand for themselves, every file ends with a line end),
  // "path -> target of a link", "path/" for a folder; "#" begins a comment. A description that cannot be made
  // fails the test.
  explicit FileTree(std::string_view description);
  // The same from a file below tests/data.
  static FileTree from_data(const std::string& file);
  ~FileTree();
  FileTree(const FileTree&) = delete;
  FileTree& operator=(const FileTree&) = delete;

  const std::filesystem::path& root() const { return root_; }
  void write(const std::string& path, std::string_view bytes) const;
  void link(const std::string& path, const std::string& target) const;

 private:
  std::filesystem::path root_;
};

} // namespace snug::test
