#pragma once
// A file that only grows, by whole pieces.

#include <cstdint>
#include <string>
#include <string_view>

namespace snug::detail {

// Every call returns 0 or an errno. POSIX; elsewhere nothing opens (untested).
class AppendFile {
 public:
  AppendFile() = default;
  AppendFile(AppendFile&& other) noexcept { swap(other); }
  AppendFile& operator=(AppendFile&& other) noexcept {
    swap(other);
    return *this;
  }
  AppendFile(const AppendFile&) = delete;
  AppendFile& operator=(const AppendFile&) = delete;
  ~AppendFile();

  // An ordinary file that exists; what it holds stays.
  int open(const std::string& path);
  bool is_open() const { return file_ >= 0; }
  // At once and at the end: all of `bytes`, or nothing, and the file is as long as before.
  int append(std::string_view bytes);
  int sync();
  int shorten(std::uint64_t octets); // octets <= size()
  std::uint64_t size() const { return size_; }
  bool has_name() const;      // false once it was removed or replaced
  int read(std::string& all); // what it holds, also without a name

 private:
  void swap(AppendFile& other) noexcept;
  int file_ = -1;
  std::uint64_t size_ = 0;
  bool torn_ = false; // a part of a piece may stand behind size_
};

} // namespace snug::detail
