#include "core/document/append_file.h"

#include <cerrno>
#include <utility>

#if defined(__unix__) || defined(__APPLE__)
#include "core/document/descriptor.h"

#include <fcntl.h>
#include <sys/stat.h>
#endif

namespace snug::detail {

void AppendFile::swap(AppendFile& other) noexcept {
  std::swap(file_, other.file_);
  std::swap(size_, other.size_);
  std::swap(torn_, other.torn_);
}

#if defined(__unix__) || defined(__APPLE__)

AppendFile::~AppendFile() {
  if (file_ >= 0) ::close(file_);
}

int AppendFile::open(const std::string& path) {
  Descriptor file(::open(path.c_str(), O_RDWR | O_APPEND | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK));
  if (!file.is_open()) return errno;
  struct stat facts {};
  if (::fstat(file.number(), &facts) != 0) return errno;
  if (!S_ISREG(facts.st_mode)) return EINVAL;
  if (file_ >= 0) ::close(file_);
  file_ = file.release();
  size_ = static_cast<std::uint64_t>(facts.st_size);
  torn_ = false;
  return 0;
}

int AppendFile::append(std::string_view bytes) {
  if (torn_)
    if (const int error = shorten(size_); error != 0) return error;
  int error = 0;
  std::size_t written = 0;
  while (error == 0 && written < bytes.size()) { // a second round tells why the first came short
    const ::ssize_t n = ::write(file_, bytes.data() + written, bytes.size() - written);
    if (n > 0) {
      written += static_cast<std::size_t>(n);
    } else if (n == 0 || errno != EINTR) {
      error = n == 0 ? ENOSPC : errno;
    }
  }
  if (error == 0) {
    size_ += written;
  } else if (written > 0) {
    torn_ = shorten(size_) != 0;
  }
  return error;
}

int AppendFile::sync() {
  int error = 0;
  do {
    error = ::fsync(file_) == 0 ? 0 : errno;
  } while (error == EINTR);
  return error;
}

int AppendFile::shorten(std::uint64_t octets) {
  if (::ftruncate(file_, static_cast<::off_t>(octets)) != 0) return errno;
  size_ = octets;
  torn_ = false;
  return 0;
}

bool AppendFile::has_name() const {
  struct stat facts {};
  return ::fstat(file_, &facts) == 0 && facts.st_nlink > 0;
}

int AppendFile::read(std::string& all) {
  all.assign(static_cast<std::size_t>(size_), '\0');
  std::size_t have = 0;
  while (have < all.size()) {
    const ::ssize_t n = ::pread(file_, all.data() + have, all.size() - have, static_cast<::off_t>(have));
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) return n == 0 ? EIO : errno;
    have += static_cast<std::size_t>(n);
  }
  return 0;
}

#else // not tested: the project is built on Linux only

AppendFile::~AppendFile() = default;
int AppendFile::open(const std::string&) { return ENOSYS; }
int AppendFile::append(std::string_view) { return ENOSYS; }
int AppendFile::sync() { return ENOSYS; }
int AppendFile::shorten(std::uint64_t) { return ENOSYS; }
bool AppendFile::has_name() const { return false; }
int AppendFile::read(std::string&) { return ENOSYS; }

#endif

} // namespace snug::detail
