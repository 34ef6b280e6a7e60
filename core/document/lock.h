#pragma once
// Keeps a document for one writer (RELIABILITY row 8 of the design).

#include "core/base/result.h"

#include <string>

namespace snug {

// Holds .NAME.lock beside the file, locked by the system, so that it ends with the process however that ends;
// programs that do not ask for it are not stopped. Links are followed: two names of one file are one lock.
class FileLock {
 public:
  // Refuses when another process, or another FileLock, holds it, and says who, also where its lock may only
  // be read. In a folder that may not be written nobody can save: the result then holds nothing and is_held()
  // is false. POSIX; elsewhere never held (untested).
  static Result<FileLock> take(const std::string& path);

  FileLock(FileLock&& other) noexcept;
  FileLock& operator=(FileLock&& other) noexcept;
  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;
  ~FileLock();

  bool is_held() const { return file_ >= 0; }

 private:
  FileLock() = default;
  int file_ = -1;
  std::string lock_path_;
};

} // namespace snug
