#include "tests/window/hand.h"

#include "ui/panels/when_seen.h"
#include "ui/session/words.h"

#include <QTest>

#include <gtest/gtest.h>

#include <tuple>
#include <utility>

namespace snug::test {

void settle(MainWindow& window) {
  Canvas& canvas = window.canvas();
  const auto shown = [&] {
    return std::tuple(canvas.mapToGlobal(QPoint()), canvas.size(), canvas.on_view(QPointF()), canvas.zoom());
  };
  auto last = shown();
  int same = 0;
  EXPECT_TRUE(QTest::qWaitFor([&] {
    same = WhenSeen::waiting() == 0 && std::exchange(last, shown()) == shown() ? same + 1 : 0;
    return same > 2;
  }));
}

Hand::Hand(MainWindow& window) : window_(window) {
  window_.resize(1720, 1000); // all panels are open
  window_.show();
  EXPECT_TRUE(QTest::qWaitForWindowExposed(&window_));
  EXPECT_TRUE(QTest::qWaitFor([] { return WhenSeen::waiting() == 0; }));
  window_.canvas().show_all();
}

MachineId Hand::machine(std::string_view name) {
  for (const Machine& m : lab().machines)
    if (m.name == name) return m.id;
  ADD_FAILURE() << "no machine " << name;
  return {};
}

SegmentId Hand::segment(std::string_view name) {
  for (const Segment& s : lab().segments)
    if (s.name == name) return s.id;
  ADD_FAILURE() << "no segment " << name;
  return {};
}

QPoint Hand::on(AnyId id) {
  const snug::Box box = box_of(window_.canvas().drawing(), id);
  EXPECT_GT(box.w, 0) << to_text(id) << " is not drawn";
  if (id.kind == Kind::machine) return window_.canvas().on_view(QPointF(box.x + 14, box.y + 14)).toPoint();
  return window_.canvas().on_view(box).center().toPoint();
}

QPoint Hand::pin(CardId card) {
  for (const AnyShape& s : window_.canvas().drawing().shapes) {
    const auto* box = std::get_if<BoxShape>(&s);
    if (box && box->of == AnyId(card) && (box->part == Part::pin || box->part == Part::square) &&
        box->box.w <= 14)
      return window_.canvas().on_view(box->box).center().toPoint();
  }
  ADD_FAILURE() << "no pin of " << to_text(card);
  return {};
}

QPoint Hand::rail(SegmentId segment) {
  for (const AnyShape& s : window_.canvas().drawing().shapes) {
    const auto* line = std::get_if<LineShape>(&s);
    if (line && line->of == AnyId(segment) && line->part == Part::rail)
      return window_.canvas().on_view(QPointF(line->to.x - 30, line->to.y)).toPoint();
  }
  ADD_FAILURE() << "no rail of " << to_text(segment);
  return {};
}

void Hand::click(QPoint at, Qt::KeyboardModifiers keys) {
  QTest::mouseClick(window_.canvas().viewport(), Qt::LeftButton, keys, at);
}

void Hand::press(QPoint at) {
  at_ = at;
  QTest::mousePress(window_.canvas().viewport(), Qt::LeftButton, {}, at);
}

void Hand::move(QPoint to) {
  constexpr int kSteps = 12;
  const QPoint from = at_;
  for (int i = 1; i <= kSteps; ++i) {
    at_ = from + (to - from) * i / kSteps;
    QMouseEvent event(QEvent::MouseMove, at_, window_.canvas().viewport()->mapToGlobal(at_), Qt::NoButton,
                      Qt::LeftButton, {});
    QCoreApplication::sendEvent(window_.canvas().viewport(), &event);
  }
}

void Hand::hover(QPoint at) {
  QMouseEvent event(QEvent::MouseMove, at, window_.canvas().viewport()->mapToGlobal(at), Qt::NoButton,
                    Qt::NoButton, {});
  QCoreApplication::sendEvent(window_.canvas().viewport(), &event);
}

void Hand::release(QPoint at) { QTest::mouseRelease(window_.canvas().viewport(), Qt::LeftButton, {}, at); }

void Hand::drag(QPoint from, QPoint to) {
  press(from);
  move(to);
  release(to);
}

void Hand::key(Qt::Key key, Qt::KeyboardModifiers keys) { QTest::keyClick(&window_.canvas(), key, keys); }

QString Hand::texts(AnyId id) {
  QStringList out;
  for (const AnyShape& s : window_.canvas().drawing().shapes)
    if (const auto* text = std::get_if<TextShape>(&s); text && text->of == id) out << as_qt(text->text);
  return out.join(QLatin1Char('|'));
}

} // namespace snug::test
