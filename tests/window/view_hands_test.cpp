// How the view is moved by hand: wheel and pinch keep what is under the pointer, Space and the middle button
// pan.

#include "tests/window/ferry_window.h"

#include <QApplication>
#include <QLineF>
#include <QNativeGestureEvent>
#include <QPointingDevice>
#include <QScrollBar>
#include <QTest>
#include <QWheelEvent>

namespace snug::test {
namespace {

class ViewHands : public FerryWindow {
 protected:
  void SetUp() override {
    FerryWindow::SetUp();
    canvas.set_zoom(2, {0, 0}); // larger than the view: there is room to every side
    scroll_to(300, 200);
  }
  void scroll_to(int x, int y) {
    canvas.horizontalScrollBar()->setValue(x);
    canvas.verticalScrollBar()->setValue(y);
    ASSERT_EQ(at(), QPoint(x, y)) << "the picture is larger than the view";
  }
  QPoint at() const { return {canvas.horizontalScrollBar()->value(), canvas.verticalScrollBar()->value()}; }
  bool pinch(QPoint where, qreal by, Qt::NativeGestureType type = Qt::ZoomNativeGesture) {
    QWidget& view = *canvas.viewport();
    QNativeGestureEvent event(type, QPointingDevice::primaryPointingDevice(), 2, where, where,
                              view.mapToGlobal(where), by, {});
    QCoreApplication::sendEvent(&view, &event);
    return event.isAccepted();
  }
  void wheel(QPoint where, int turn) {
    QWidget& view = *canvas.viewport();
    QWheelEvent event(where, view.mapToGlobal(where), {}, {0, turn}, Qt::NoButton, Qt::ControlModifier,
                      Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(&view, &event);
  }
  // Pixels of the view by which what was under the pointer has gone.
  qreal gone(QPointF drawn, QPoint where) const { return QLineF(canvas.on_view(drawn), where).length(); }
  void pan(Qt::MouseButton button, QPoint from, QPoint by) {
    QWidget& view = *canvas.viewport();
    QTest::mousePress(&view, button, {}, from);
    for (int i = 1; i <= 10; ++i) {
      const QPoint now = from + by * i / 10;
      QMouseEvent move(QEvent::MouseMove, now, view.mapToGlobal(now), Qt::NoButton, button, {});
      QCoreApplication::sendEvent(&view, &move);
    }
    QTest::mouseRelease(&view, button, {}, from + by);
  }
  Canvas& canvas = window.canvas();
};

// A pinch is many small steps; what they lose must not add up.
TEST_F(ViewHands, APinchKeepsWhatIsUnderThePointer) {
  for (const QPoint where : {QPoint(411, 302), QPoint(155, 97), QPoint(603, 251)}) {
    canvas.set_zoom(2, {0, 0});
    scroll_to(300, 200);
    const QPointF drawn = canvas.on_drawing(where);
    const qreal before = canvas.zoom();
    qreal expected = before;
    for (int i = 0; i < 60; ++i) {
      pinch(where, 0.0083);
      expected *= 1.0083;
      ASSERT_LT(gone(drawn, where), 1) << "step " << i;
    }
    EXPECT_NEAR(canvas.zoom(), expected, 0.001);
    for (int i = 0; i < 40; ++i) {
      pinch(where, -0.0091);
      ASSERT_LT(gone(drawn, where), 1) << "back, step " << i;
    }
    EXPECT_LT(canvas.zoom(), expected);
  }
  EXPECT_EQ(write_lab(hand.lab()), first_bytes);
  EXPECT_FALSE(hand.session().can_undo());
}

TEST_F(ViewHands, OtherGesturesAndWildValuesChangeNothingForTheWorse) {
  const qreal before = canvas.zoom();
  for (const auto type : {Qt::RotateNativeGesture, Qt::SwipeNativeGesture, Qt::PanNativeGesture,
                          Qt::BeginNativeGesture, Qt::EndNativeGesture})
    pinch({100, 100}, 0.5, type);
  EXPECT_EQ(canvas.zoom(), before);
  pinch({100, 100}, -3);
  EXPECT_GT(canvas.zoom(), 0);
  EXPECT_LT(canvas.zoom(), before);
  pinch({100, 100}, 1e9);
  EXPECT_LT(canvas.zoom(), 100);
}

TEST_F(ViewHands, TheWheelWithCtrlKeepsWhatIsUnderThePointer) {
  const QPoint where(377, 290);
  const QPointF drawn = canvas.on_drawing(where);
  for (const int turn : {120, 15, 15, 30, -45, 120, -120}) {
    wheel(where, turn);
    ASSERT_LT(gone(drawn, where), 1);
  }
  EXPECT_GT(canvas.zoom(), 2);
  scroll_to(300, 200);
  const QPointF other = canvas.on_drawing(where);
  EXPECT_GT(QLineF(other, drawn).length(), 1);
  wheel(where, 120);
  EXPECT_LT(gone(other, where), 1) << "after scrolling another point is under the pointer";
}

TEST_F(ViewHands, TheMiddleButtonPans) {
  const QPoint before = at();
  pan(Qt::MiddleButton, hand.on(hand.machine("tickets-1")), {-37, -21});
  EXPECT_EQ(at(), before + QPoint(37, 21));
  EXPECT_FALSE(hand.session().can_undo()) << "whatever was under it";
  EXPECT_TRUE(hand.session().selection().empty());
}

TEST_F(ViewHands, SpaceAndDragPans) {
  const QPoint before = at();
  const QPoint on = hand.on(hand.machine("tickets-1"));
  canvas.setFocus();
  QTest::keyPress(&canvas, Qt::Key_Space);
  pan(Qt::LeftButton, on, {-37, -21});
  EXPECT_EQ(at(), before + QPoint(37, 21));
  EXPECT_FALSE(hand.session().can_undo());
  EXPECT_TRUE(hand.session().selection().empty());
  QTest::keyRelease(&canvas, Qt::Key_Space);
  const QPoint there = at();
  pan(Qt::LeftButton, {4, 4}, {-37, -21});
  EXPECT_EQ(at(), there) << "without Space it does not";
}

} // namespace
} // namespace snug::test
