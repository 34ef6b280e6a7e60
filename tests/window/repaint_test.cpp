// What a drag paints piece by piece is what painting the whole view gives.

#include "tests/support/random_lab.h"
#include "tests/support/scale.h"
#include "tests/window/hand.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QMouseEvent>
#include <QScreen>
#include <QTest>
#include <QWindow>

#include <algorithm>
#include <cstdlib>

namespace snug::test {
namespace {

// What the window shows, without painting it.
QImage on_screen(MainWindow& window) {
  QCoreApplication::processEvents();
  const QWidget& view = *window.canvas().viewport();
  const QPixmap all = window.screen()->grabWindow(window.winId());
  return all.copy(QRect(view.mapTo(&window, QPoint()), view.size())).toImage();
}

// The largest difference of a colour, and where.
std::pair<int, QPoint> difference(const QImage& a, const QImage& b) {
  std::pair<int, QPoint> most;
  for (int y = 0; y < a.height(); ++y)
    for (int x = 0; x < a.width(); ++x) {
      const QRgb p = a.pixel(x, y), q = b.pixel(x, y);
      const int d = std::max(
          {std::abs(qRed(p) - qRed(q)), std::abs(qGreen(p) - qGreen(q)), std::abs(qBlue(p) - qBlue(q))});
      if (d > most.first) most = {d, {x, y}};
    }
  return most;
}

void compare(MainWindow& window, const std::string& what) {
  constexpr int kRounding = 3; // curves that are cut differently
  const QImage pieces = on_screen(window);
  window.canvas().set_theme(Theme::light); // nothing that was painted before is used
  const QImage whole = on_screen(window);
  ASSERT_EQ(pieces.size(), whole.size());
  const auto [most, at] = difference(pieces, whole);
  ASSERT_LE(most, kRounding) << what << " at " << at.x() << ", " << at.y();
}

void drag_about(qreal zoom, Random& random) {
  MainWindow window;
  window.resize(1300, 900);
  window.start_sample("sixty");
  window.canvas().findChild<QWidget*>(QStringLiteral("minimap"))->setMaximumSize(0, 0); // comes later
  Hand hand(window);
  window.canvas().set_zoom(zoom, QPointF(0, 0));
  QTest::qWait(20);
  const QRect view = window.canvas().viewport()->rect();
  const auto id = hand.lab().machines[random.below(hand.lab().machines.size())].id;
  const QPoint from = hand.on(id);
  if (!view.contains(from)) return;
  hand.press(from);
  compare(window, "pressed");
  for (int i = 0; i < 12; ++i) {
    const QPoint to(static_cast<int>(random.below(static_cast<std::size_t>(view.width()))),
                    static_cast<int>(random.below(static_cast<std::size_t>(view.height()))));
    QMouseEvent move(QEvent::MouseMove, to, window.canvas().viewport()->mapToGlobal(to), Qt::NoButton,
                     Qt::LeftButton, {});
    QCoreApplication::sendEvent(window.canvas().viewport(), &move);
    compare(window,
            "move " + std::to_string(i) + " to " + std::to_string(to.x()) + ", " + std::to_string(to.y()));
    if (testing::Test::HasFatalFailure()) break;
  }
  hand.key(Qt::Key_Escape);
  hand.release(from);
  compare(window, "let go");
}

TEST(Repaint, PiecesOfADragEqualTheWholeView) {
  for (int i = 0; i < scaled(120); ++i) {
    Random random(static_cast<std::uint64_t>(i) + 1);
    const qreal zooms[]{1, 0.8, 1.37, 0.5, 0.3};
    drag_about(zooms[static_cast<std::size_t>(i) % 5], random);
    if (HasFatalFailure()) FAIL() << "seed " << i + 1;
  }
}

} // namespace
} // namespace snug::test
