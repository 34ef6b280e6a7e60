#pragma once
// A folder of its own for a test; gone at the end.

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace snug::test {

class TempFolder {
 public:
  TempFolder(); // everyone may enter it
  ~TempFolder();
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  TempFolder(TempFolder&&) = delete;
  TempFolder& operator=(TempFolder&&) = delete;

  std::string path(std::string_view name) const { return (folder_ / name).string(); }
  std::string path() const { return folder_.string(); }
  std::vector<std::string> names() const; // sorted

 private:
  std::filesystem::path folder_;
};

void put_bytes(const std::string& path, std::string_view bytes);
std::string bytes_of(const std::string& path); // "?" when it cannot be read

} // namespace snug::test
