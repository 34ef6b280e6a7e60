#pragma once
// An open file or folder of POSIX; closed at the end.

#include <unistd.h>
#include <utility>

namespace snug::detail {

class Descriptor {
 public:
  Descriptor() = default;
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }

  int number() const { return number_; }
  bool is_open() const { return number_ >= 0; }
  int release() { return std::exchange(number_, -1); }

 private:
  int number_ = -1;
};

} // namespace snug::detail
