#pragma once
// An X server of a test's own.

#include <string>
#include <sys/types.h>

namespace snug::test {

// Xvfb on a free display, 1920x900; it ends with this object, and with the test however that ends.
class Display {
 public:
  Display();
  ~Display();
  Display(const Display&) = delete;
  Display& operator=(const Display&) = delete;
  bool is_there() const { return !name_.empty(); }
  const std::string& name() const { return name_; } // ":7"

 private:
  ::pid_t server_ = -1;
  std::string name_;
};

} // namespace snug::test
