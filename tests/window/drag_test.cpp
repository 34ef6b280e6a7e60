// Frames of a drag, counted and compared with painting everything (PERFORMANCE row 4 without a clock).

#include "tests/window/hand.h"

#include <gtest/gtest.h>

#include <QMouseEvent>
#include <QScreen>
#include <QTest>

#include <cstdlib>
#include <set>

namespace snug::test {
namespace {

// Where lines are cut at the edge of what is painted, their smooth edges may be rounded otherwise.
bool differ(QRgb a, QRgb b) {
  constexpr int kRounding = 2;
  return std::abs(qRed(a) - qRed(b)) > kRounding || std::abs(qGreen(a) - qGreen(b)) > kRounding ||
         std::abs(qBlue(a) - qBlue(b)) > kRounding;
}

// Around all pixels that differ.
QRect differing(const QImage& a, const QImage& b) {
  QRect all;
  for (int y = 0; y < a.height(); ++y)
    for (int x = 0; x < a.width(); ++x)
      if (differ(a.pixel(x, y), b.pixel(x, y))) all |= QRect(x, y, 1, 1);
  return all;
}

class Drag : public ::testing::Test {
 protected:
  void SetUp() override {
    window.start_sample("skerry-ferries");
    canvas().show_all();
    hand.press(hand.on(hand.machine("tickets-1")));
    for (const char* name : {"deck-b", "deck-a"})
      for (const QPoint by : {QPoint(4, 4), QPoint(40, 60)}) places.push_back(at(name) + by);
    places.emplace_back(6, 6);
  }
  Canvas& canvas() { return window.canvas(); }
  QPoint at(const char* name) { return hand.on(hand.machine(name)); }
  // What stands on the screen where the canvas is.
  QImage on_screen() {
    const QRect where(canvas().viewport()->mapTo(&window, QPoint(0, 0)), canvas().viewport()->size());
    return window.screen()
        ->grabWindow(window.winId(), where.x(), where.y(), where.width(), where.height())
        .toImage();
  }
  MainWindow window;
  Hand hand{window};
  std::vector<QPoint> places; // over rooms, between their guests, and outside
};

TEST_F(Drag, FramesLeaveNothingBehind) {
  ASSERT_FALSE(on_screen().isNull());
  canvas().findChild<QWidget*>(QStringLiteral("minimap"))->setMaximumSize(0, 0); // has frames of its own
  for (int round = 0; round < 2; ++round) {
    for (const QPoint place : places) {
      hand.move(place);
      QTest::qWait(20);
      const QImage frame = on_screen();
      canvas().viewport()->repaint();
      EXPECT_EQ(differing(frame, on_screen()), QRect())
          << "at " << place.x() << ", " << place.y() << ", round " << round;
    }
    canvas().set_zoom(1.4, {0, 0});
  }
  canvas().cancel();
}

TEST_F(Drag, OnlyMachinesThatAPreviewTouchesAreMadeAnew) {
  Session& session = window.session();
  hand.move(places[0]); // the first preview makes all
  std::vector<AnyId> before = session.previewed();
  for (std::size_t i = 1; i + 1 < places.size(); ++i) {
    const std::int64_t made = canvas().made();
    QMouseEvent move(QEvent::MouseMove, places[i], canvas().viewport()->mapToGlobal(places[i]), Qt::NoButton,
                     Qt::LeftButton, {});
    QCoreApplication::sendEvent(canvas().viewport(), &move);
    const std::vector<AnyId> now = session.previewed();
    if (!session.is_previewing()) continue;
    std::set<AnyId> touched(before.begin(), before.end());
    touched.insert(now.begin(), now.end());
    const auto machines = static_cast<std::int64_t>(session.lab().machines.size());
    EXPECT_LE(canvas().made() - made, static_cast<std::int64_t>(touched.size())) << "place " << i;
    EXPECT_LT(canvas().made() - made, machines / 2) << "place " << i;
    before = now;
  }
  canvas().cancel();
}

} // namespace
} // namespace snug::test
