#include "tests/support/temp_folder.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sys/stat.h>

namespace snug::test {

namespace fs = std::filesystem;

TempFolder::TempFolder() {
  std::string form = (fs::temp_directory_path() / "snug-XXXXXX").string();
  if (::mkdtemp(form.data()) == nullptr) std::abort();
  ::chmod(form.c_str(), 0777);
  folder_ = form;
}

TempFolder::~TempFolder() {
  std::error_code ignored;
  fs::remove_all(folder_, ignored);
}

std::vector<std::string> TempFolder::names() const {
  std::vector<std::string> out;
  for (const auto& entry : fs::directory_iterator(folder_)) out.push_back(entry.path().filename().string());
  std::sort(out.begin(), out.end());
  return out;
}

void put_bytes(const std::string& path, std::string_view bytes) {
  std::ofstream(path, std::ios::binary).write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) return "?";
  return std::string(std::istreambuf_iterator<char>(in), {});
}

} // namespace snug::test
