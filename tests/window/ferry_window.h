#pragma once
// A window with the ferry sample, which every test leaves by undo as it was.

#include "core/document/write.h"
#include "tests/window/hand.h"

#include <gtest/gtest.h>

namespace snug::test {

class FerryWindow : public ::testing::Test {
 protected:
  void SetUp() override {
    window.start_sample("skerry-ferries");
    settle(window);
    first_bytes = write_lab(hand.lab());
  }
  const Machine& machine(const char* name) { return *find<Machine>(hand.lab(), hand.machine(name)); }
  void back_to_the_first_bytes() {
    while (hand.session().can_undo()) hand.session().undo();
    EXPECT_TRUE(write_lab(hand.lab()) == first_bytes);
  }
  MainWindow window;
  Hand hand{window};
  std::string first_bytes;
};

} // namespace snug::test
