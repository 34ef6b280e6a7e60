#pragma once
// Tests of permissions: root may do everything.

#include <gtest/gtest.h>
#include <unistd.h>

namespace snug::test {

// For as long as it lives, the rights of somebody without privileges.
class Nobody {
 public:
  Nobody() {
    if (before_ == 0 && ::seteuid(65534) != 0) ADD_FAILURE() << "still privileged";
  }
  ~Nobody() { EXPECT_EQ(::seteuid(before_), 0); }
  Nobody(const Nobody&) = delete;
  Nobody& operator=(const Nobody&) = delete;

 private:
  ::uid_t before_ = ::geteuid();
};

} // namespace snug::test
