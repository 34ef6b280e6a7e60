// Whatever a hand does, undo brings the first octets back; and painting stays small while something is
// dragged.

#include "core/document/write.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"
#include "tests/window/hand.h"
#include "tests/window/random_hand.h"

#include <gtest/gtest.h>

#include <QTest>

namespace snug::test {
namespace {

TEST(Gestures, RandomOnesAreTakenBackWhole) {
  const int rounds = scaled(40);
  int steps = 0;
  for (int round = 0; round < rounds; ++round) {
    MainWindow window;
    window.start_sample("skerry-ferries");
    Hand hand(window);
    const std::string first = write_lab(hand.lab());
    Random random(static_cast<std::uint64_t>(round) + 1);
    for (int i = 0; i < 40; ++i) {
      act_at_random(random, hand);
      ASSERT_FALSE(hand.session().is_previewing()) << "round " << round << ", gesture " << i;
      ASSERT_EQ(QApplication::activeModalWidget(), nullptr);
    }
    while (hand.session().can_undo()) {
      hand.session().undo();
      ++steps;
    }
    ASSERT_EQ(write_lab(hand.lab()), first) << "round " << round;
  }
  EXPECT_GT(steps, rounds * 3) << "the hand missed everything";
}

// PERFORMANCE 4: hard counters. A move that aims at nothing new paints what is under the words at the
// pointer.
TEST(Gestures, DragPaintsLittle) {
  MainWindow window;
  window.start_sample("sixty");
  Hand hand(window);
  window.canvas().set_zoom(1, QPointF(0, 0));
  QTest::qWait(50);
  window.canvas().take_painted();
  window.canvas().viewport()->repaint();
  const Canvas::Painted whole = window.canvas().take_painted();
  ASSERT_EQ(whole.frames, 1);
  const MachineId guest = guests_in_order(hand.lab(), {}).front();
  const QPoint from = hand.on(guest);
  hand.press(from);
  hand.move(from + QPoint(0, 12));
  QTest::qWait(20);
  window.canvas().take_painted();
  std::int64_t most = 0, fulls = 0;
  for (int i = 0; i < 30; ++i) {
    hand.move(from + QPoint(i % 5, 12 + i % 3));
    QCoreApplication::processEvents();
    const Canvas::Painted p = window.canvas().take_painted();
    if (p.frames > 0) most = std::max(most, p.shapes / p.frames);
    fulls += p.whole;
  }
  EXPECT_EQ(fulls, 0);
  EXPECT_LT(most, whole.shapes / 3) << "of " << whole.shapes;
  hand.key(Qt::Key_Escape);
  hand.release(from);
}

} // namespace
} // namespace snug::test
