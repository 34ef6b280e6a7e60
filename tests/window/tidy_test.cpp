// Tidy by its key: the order with the fewest crossings, seen moving, taken back whole.

#include "core/layout/tidy.h"
#include "tests/window/hand.h"

#include "ui/window/notice_bar.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QTest>

namespace snug::test {
namespace {

class TidyWindow : public ::testing::Test {
 protected:
  QImage picture() { return window.canvas().viewport()->grab().toImage(); }
  MainWindow window;
  Hand hand{window};
};

TEST_F(TidyWindow, OrdersMovesAndIsTakenBack) {
  window.start_sample("mistakes");
  window.canvas().show_all();
  const Lab before = hand.lab();
  const QImage was = picture();
  hand.key(Qt::Key_T, Qt::ControlModifier);
  EXPECT_LT(tidiness(window.session().analysis()), tidiness(Analysis(before)));
  EXPECT_EQ(window.session().undo_words(), QStringLiteral("Tidy"));
  EXPECT_TRUE(window.notice().text().startsWith(QStringLiteral("Tidied: wires cross rails ")))
      << window.notice().text().toStdString();
  const QImage at_first = picture();
  QTest::qWait(120);
  const QImage on_the_way = picture();
  QTest::qWait(400);
  const QImage there = picture();
  EXPECT_NE(on_the_way, there);
  EXPECT_NE(at_first, there);
  EXPECT_NE(was, there);
  window.canvas().viewport()->repaint();
  EXPECT_EQ(picture(), there) << "it stands still";
  hand.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(hand.lab(), before);
}

TEST_F(TidyWindow, SaysThatNothingIsBetter) {
  window.start_sample("mistakes");
  hand.key(Qt::Key_T, Qt::ControlModifier);
  const Lab tidied = hand.lab();
  QTest::qWait(400);
  for (int i = 0; i < 3; ++i) hand.key(Qt::Key_T, Qt::ControlModifier);
  EXPECT_EQ(tidiness(window.session().analysis()), tidiness(Analysis(tidied)));
  EXPECT_TRUE(window.notice().text().contains(QStringLiteral("tidy already")))
      << window.notice().text().toStdString();
}

// What comes next does not wait for the movement.
TEST_F(TidyWindow, APressEndsTheMovement) {
  window.start_sample("mistakes");
  window.canvas().show_all();
  QTest::qWait(300); // bars come and go
  hand.key(Qt::Key_T, Qt::ControlModifier);
  hand.press(QPoint(3, 3));
  const QImage now = picture();
  QTest::qWait(400);
  EXPECT_EQ(picture(), now);
  hand.release(QPoint(3, 3));
}

} // namespace
} // namespace snug::test
