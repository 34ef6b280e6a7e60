#include "tests/support/file_tree.h"

#include <cstdlib> // mkdtemp (POSIX)
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <sstream>

namespace snug::test {

namespace fs = std::filesystem;

namespace {

std::string unescaped(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const std::string_view two = text.substr(at, 2);
    const bool escape = two == "\\n" || two == "\\t";
    out += escape ? (two == "\\n" ? '\n' : '\t') : text[at];
    at += escape ? 1 : 0;
  }
  return out + '\n';
}

} // namespace

FileTree::FileTree() {
  std::string name = (fs::path(testing::TempDir()) / "snuglab-tree-XXXXXX").string();
  if (mkdtemp(name.data()) == nullptr) ADD_FAILURE() << "no folder " << name;
  root_ = name;
}

FileTree::FileTree(std::string_view description) : FileTree() {
  std::istringstream in{std::string(description)};
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    const std::size_t equals = line.find(" = ");
    const std::size_t arrow = line.find(" -> ");
    if (equals != std::string::npos) {
      write(line.substr(0, equals), unescaped(std::string_view(line).substr(equals + 3)));
    } else if (arrow != std::string::npos) {
      link(line.substr(0, arrow), line.substr(arrow + 4));
    } else {
      EXPECT_TRUE(line.ends_with('/')) << line;
      fs::create_directories(root_ / line);
    }
  }
}

FileTree FileTree::from_data(const std::string& file) {
  std::ifstream in(SNUG_SOURCE_DIR "/tests/data/" + file);
  EXPECT_TRUE(in) << file;
  return FileTree(std::string(std::istreambuf_iterator<char>(in), {}));
}

FileTree::~FileTree() {
  std::error_code error;
  fs::remove_all(root_, error);
}

void FileTree::write(const std::string& path, std::string_view bytes) const {
  fs::create_directories((root_ / path).parent_path());
  std::ofstream out(root_ / path, std::ios::binary);
  out << bytes;
  EXPECT_TRUE(out) << path;
}

void FileTree::link(const std::string& path, const std::string& target) const {
  fs::create_directories((root_ / path).parent_path());
  std::error_code error;
  fs::create_symlink(target, root_ / path, error);
  EXPECT_FALSE(error) << path;
}

} // namespace snug::test
