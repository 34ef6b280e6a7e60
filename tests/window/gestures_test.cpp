// Whatever a hand does, undo brings the first octets back; and painting stays small while something is
// dragged.

#include "core/document/write.h"
#include "tests/support/random_lab.h"
#include "tests/support/scale.h"
#include "tests/window/hand.h"

#include <gtest/gtest.h>

#include <QTest>

namespace snug::test {
namespace {

QPoint anywhere(Random& random, Hand& hand) {
  const Drawing& drawing = hand.window().canvas().drawing();
  const Group& g = drawing.groups[random.below(drawing.groups.size())];
  const QRectF box = hand.window().canvas().on_view(g.box);
  return QPointF(box.x() + box.width() * static_cast<double>(random.below(100)) / 100,
                 box.y() + box.height() * static_cast<double>(random.below(100)) / 100)
      .toPoint();
}

void act(Random& random, Hand& hand) {
  switch (random.below(9)) {
  case 0:
    return hand.click(anywhere(random, hand), random.chance(40) ? Qt::ControlModifier : Qt::NoModifier);
  case 1:
    return hand.window().action("duplicate")->trigger();
  case 2:
    if (hand.lab().machines.size() > 4) hand.window().action("remove")->trigger();
    return;
  case 3:
    return hand.window().action("undo")->trigger();
  case 4: {
    hand.press(anywhere(random, hand));
    hand.move(anywhere(random, hand));
    hand.key(Qt::Key_Escape);
    return hand.release(QPoint(1, 1));
  }
  default:
    return hand.drag(anywhere(random, hand), anywhere(random, hand));
  }
}

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
      act(random, hand);
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
