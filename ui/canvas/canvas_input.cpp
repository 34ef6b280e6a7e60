#include "core/gesture/bands.h"
#include "core/gesture/carry.h"
#include "core/text/hand_text.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/canvas_access.h"
#include "ui/session/words.h"

#include <QApplication>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QScrollBar>
#include <QStyleHints>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace snug {

namespace {

constexpr qreal kReach = 6;       // of the pointer, pixels of the window
constexpr qreal kWheelStep = 120; // eighths of a degree

constexpr int kFar = 1'000'000'000;

int gap(int a, int a_end, int b, int b_end) { return std::max({0, b - a_end, a - b_end}); }

// How far an arrow key has to go from one box to the other; kFar: it is not there. What is aside counts more.
int distance(const snug::Box& from, const snug::Box& to, int key) {
  if (from.w == 0) return to.x + to.y;
  if (to.w == 0) return kFar;
  const bool across = key == Qt::Key_Left || key == Qt::Key_Right;
  const snug::Point at = to.centre();
  const bool ahead = key == Qt::Key_Right  ? at.x >= from.right()
                     : key == Qt::Key_Left ? at.x <= from.x
                     : key == Qt::Key_Down ? at.y >= from.bottom() || from.contains(to)
                                           : at.y <= from.y || to.contains(from);
  if (!ahead) return kFar;
  if (from.contains(to)) return to.x - from.x + to.y - from.y - from.w - from.h; // before its pins
  if (to.contains(from)) return key == Qt::Key_Up ? from.y - to.y : kFar;        // out of a room
  const int x = gap(from.x, from.right(), to.x, to.right());
  const int y = gap(from.y, from.bottom(), to.y, to.bottom());
  const int aside = across ? y : x;
  return (across ? x : y) + aside * 5 / 2;
}

} // namespace

void Canvas::mousePressEvent(QMouseEvent* event) {
  setFocus(Qt::MouseFocusReason);
  glide_.stop();
  if (placing_ && event->button() == Qt::LeftButton) return finish_gesture(event->position());
  if (gesture_) return cancel();
  pressed_at_ = event->position();
  if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && space_)) {
    panning_ = true;
    viewport()->setCursor(Qt::ClosedHandCursor);
    return;
  }
  pulled_ = event->button() == Qt::LeftButton ? handle_at(pressed_at_) : AnyId{};
  if (pulled_) {
    is_pressed_ = true;
    pressed_ = {};
    return;
  }
  if (const MachineId m = power_at(pressed_at_); m && event->button() == Qt::LeftButton) return press_mark(m);
  pressed_ = hit(drawing_, on_drawing(pressed_at_), kReach / zoom_);
  if (event->button() == Qt::LeftButton) press_on(pressed_, event);
}

// Let go on the mark it switches, elsewhere nothing happens.
void Canvas::press_mark(MachineId machine) {
  take_before();
  gesture_ = press_power(session_, machine, power_reach());
  move_gesture(pressed_at_);
}

void Canvas::press_on(const Hit& h, QMouseEvent* event) {
  is_pressed_ = true;
  keep_ = (event->modifiers() & (Qt::ControlModifier | Qt::ShiftModifier)) != 0;
  const bool nothing = !h.of || h.of.kind == Kind::pc;
  if (nothing) {
    if (!keep_) session_.select({});
    focus_ = {}; // keys mean nothing that was chosen before
    return;
  }
  focus_ = h.of;
  if (h.part == Part::band) return choose_band(MachineId{h.of.number});
  std::vector<AnyId> ids = keep_ ? session_.selection() : std::vector<AnyId>{};
  if (keep_ && session_.is_selected(h.of)) {
    std::erase(ids, h.of);
  } else if (!session_.is_selected(h.of)) {
    ids.push_back(h.of);
  } else {
    return; // a press on what is selected may begin a drag of all of it
  }
  session_.select(std::move(ids));
}

void Canvas::choose_band(MachineId first) {
  const Machine& m = *snug::find<Machine>(session_.lab(), first);
  const std::vector<MachineId> all = machines_of(session_.lab(), {m.carrier, m.band});
  session_.select({all.begin(), all.end()});
}

void Canvas::mouseMoveEvent(QMouseEvent* event) {
  const QPointF at = event->position();
  if (panning_) {
    const QPointF by = at - pressed_at_;
    pressed_at_ = at;
    fit_ = Fit::none;
    horizontalScrollBar()->setValue(horizontalScrollBar()->value() - qRound(by.x()));
    verticalScrollBar()->setValue(verticalScrollBar()->value() - qRound(by.y()));
    return;
  }
  if (gesture_) return takes_out(*event) ? take_out() : move_gesture(at);
  if (is_pressed_ &&
      (at - pressed_at_).manhattanLength() >= QGuiApplication::styleHints()->startDragDistance())
    return start_drag(at);
  const AnyId handle = handle_at(at);
  viewport()->setCursor(handle ? Qt::CrossCursor : power_at(at) ? Qt::PointingHandCursor : Qt::ArrowCursor);
  if (handle) return;
  const Hit over = hit(drawing_, on_drawing(at), kReach / zoom_);
  set_hover(over.part == Part::band ? AnyId{} : over.of);
  if (over.part == Part::band || over.part == Part::gateway || over.part == Part::dhcp)
    viewport()->setCursor(Qt::OpenHandCursor);
}

void Canvas::mouseReleaseEvent(QMouseEvent* event) {
  if (panning_) {
    panning_ = false;
    viewport()->unsetCursor();
    return;
  }
  const bool was_pressed = std::exchange(is_pressed_, false);
  const AnyId pulled = std::exchange(pulled_, {});
  if (event->button() != Qt::LeftButton) return;
  if (was_pressed && pulled && !gesture_) { // a click: the next one is on the rail
    begin(pull_from(pulled));
    return move_gesture(event->position());
  }
  if (gesture_ && !placing_) return finish_gesture(event->position());
  if (was_pressed && !keep_ && pressed_.of && pressed_.part != Part::band &&
      session_.selection().size() > 1 && session_.is_selected(pressed_.of))
    session_.select({pressed_.of});
}

void Canvas::mouseDoubleClickEvent(QMouseEvent* event) {
  if (power_at(event->position())) return mousePressEvent(event); // two quick clicks
  const Hit h = hit(drawing_, on_drawing(event->position()), kReach / zoom_);
  if (h.of && event->button() == Qt::LeftButton) emit edit_wanted(h.of);
}

void Canvas::set_hover(AnyId id) {
  if (id.kind == Kind::pc) id = {};
  if (id == hover_) return;
  update_around(hover_);
  hover_ = id;
  update_around(hover_);
}

void Canvas::wheelEvent(QWheelEvent* event) {
  if ((event->modifiers() & Qt::ControlModifier) == 0) return QAbstractScrollArea::wheelEvent(event);
  set_zoom(zoom_ * std::pow(1.2, event->angleDelta().y() / kWheelStep), event->position());
  event->accept();
}

void Canvas::pinch(const QNativeGestureEvent& event) {
  constexpr qreal kLeast = 0.2; // of the size before, by one step
  set_zoom(zoom_ * std::max(kLeast, 1 + event.value()), event.position());
}

std::vector<AnyId> Canvas::places_in_order() const {
  std::vector<AnyId> ids;
  for (const Group& g : drawing_.groups)
    if (g.of && (placing_ || g.of.kind != Kind::pc) && std::find(ids.begin(), ids.end(), g.of) == ids.end())
      ids.push_back(g.of);
  return ids;
}

// The nearest element in the direction of an arrow key; down from a room goes into it.
AnyId Canvas::next_focus(int key) const {
  const snug::Box from = box_of(drawing_, focus_);
  AnyId best;
  int nearest = kFar;
  for (const AnyId id : places_in_order()) {
    const int far = id == focus_ ? kFar : distance(from, box_of(drawing_, id), key);
    if (far >= nearest) continue;
    nearest = far;
    best = id;
  }
  return best;
}

void Canvas::step_focus(int key) {
  if (const AnyId best = next_focus(key)) {
    session_.select({best});
    show_place(best);
  }
}

void Canvas::keyPressEvent(QKeyEvent* event) {
  if (placing_ && take_key(*event)) return;
  switch (event->key()) {
  case Qt::Key_Escape:
    if (gesture_) return cancel();
    return session_.select({});
  case Qt::Key_Left:
  case Qt::Key_Right:
  case Qt::Key_Up:
  case Qt::Key_Down:
    return step_focus(event->key());
  case Qt::Key_Space:
    if (!event->isAutoRepeat()) space_ = true;
    return;
  case Qt::Key_Return:
  case Qt::Key_Enter:
  case Qt::Key_F2:
    if (focus_) emit edit_wanted(focus_);
    return;
  case Qt::Key_Menu:
    if (focus_)
      emit menu_wanted(focus_, viewport()->mapToGlobal(on_view(box_of(drawing_, focus_)).center().toPoint()));
    return;
  default:
    QAbstractScrollArea::keyPressEvent(event);
  }
}

void Canvas::keyReleaseEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) space_ = false;
  QAbstractScrollArea::keyReleaseEvent(event);
}

void Canvas::contextMenuEvent(QContextMenuEvent* event) {
  if (gesture_) return cancel();
  const Hit h = hit(drawing_, on_drawing(event->pos()), kReach / zoom_);
  if (h.of && h.of.kind != Kind::pc && !session_.is_selected(h.of)) session_.select({h.of});
  emit menu_wanted(h.of, event->globalPos());
}

bool Canvas::viewportEvent(QEvent* event) {
  if (event->type() == QEvent::ToolTip) {
    const auto* help = static_cast<QHelpEvent*>(event);
    if (const AnyId handle = handle_at(help->pos())) {
      QToolTip::showText(help->globalPos(), handle_help(handle), viewport());
      return true;
    }
    if (const MachineId m = power_at(help->pos())) {
      QToolTip::showText(help->globalPos(), power_help(m), viewport());
      return true;
    }
    const Hit h = hit(drawing_, on_drawing(help->pos()), kReach / zoom_);
    if (const QString pin = pin_help(h); !pin.isEmpty()) {
      QToolTip::showText(help->globalPos(), pin, viewport());
      return true;
    }
    for (const Group& g : drawing_.groups)
      if (h.of && g.of == h.of && h.of.kind != Kind::pc && !g.title.empty()) {
        QToolTip::showText(help->globalPos(),
                           as_qt(g.title + (g.description.empty() ? "" : "\n" + g.description)), viewport());
        return true;
      }
    QToolTip::hideText();
    return true;
  }
  if (event->type() == QEvent::NativeGesture) {
    const auto* fingers = static_cast<QNativeGestureEvent*>(event);
    if (fingers->gestureType() != Qt::ZoomNativeGesture) return false;
    pinch(*fingers);
    return true;
  }
  if (event->type() == QEvent::Leave) set_hover({});
  return QAbstractScrollArea::viewportEvent(event);
}

// Around the view stands a frame of the widget's own.
void Canvas::focusInEvent(QFocusEvent*) {
  update();
  viewport()->update();
  CanvasAccess::tell(*this);
}
void Canvas::focusOutEvent(QFocusEvent*) {
  space_ = false;
  update();
  viewport()->update();
}

} // namespace snug
