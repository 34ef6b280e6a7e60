// New things on their way to the picture: dragged from the parts, or chosen there and then placed by a click
// or by the keyboard.

#include "core/text/gesture_text.h"
#include "ui/canvas/canvas.h"
#include "ui/session/words.h"

#include <QKeyEvent>

namespace snug {

namespace {

// Of the drawing, where something is put down when an element is aimed at by the keyboard: on a rail, at the
// end of a hypervisor's guests, behind a machine.
QPointF place_of(const Drawing& drawing, AnyId id) {
  const bool is_segment = id.kind == Kind::segment;
  for (const AnyShape& shape : drawing.shapes)
    if (const auto* line = std::get_if<LineShape>(&shape);
        is_segment && line && line->of == id && line->part == Part::rail)
      return {(line->from.x + line->to.x) / 2.0, (line->from.y + line->to.y) / 2.0};
  constexpr qreal kInside = 3; // of the edge
  const QRectF box = as_rect(box_of(drawing, id));
  return box.bottomRight() - QPointF(kInside, kInside);
}

} // namespace

void Canvas::begin(std::unique_ptr<Gesture> gesture) {
  cancel();
  gesture_ = std::move(gesture);
  take_before();
  placing_ = true;
  typed_ = 0;
  viewport()->setCursor(Qt::CrossCursor);
}

void Canvas::begin_by_key(std::unique_ptr<Gesture> gesture) {
  gesture->set_help(words(text::gesture_keys_help));
  begin(std::move(gesture));
  setFocus();
  aim_at(box_of(drawing_, focus_).w == 0 ? AnyId{Kind::pc, 0} : focus_);
}

void Canvas::aim_at(AnyId id) {
  focus_ = id;
  show_place(id);
  move_gesture(on_view(place_of(before_, id)));
}

// While something is placed: arrows aim, Home at the PC, Enter puts down, digits, + and - say how many.
bool Canvas::take_key(const QKeyEvent& event) {
  switch (event.key()) {
  case Qt::Key_Left:
  case Qt::Key_Right:
  case Qt::Key_Up:
  case Qt::Key_Down:
    if (const AnyId next = next_focus(event.key())) aim_at(next);
    return true;
  case Qt::Key_Home:
    aim_at({Kind::pc, 0});
    return true;
  case Qt::Key_Return:
  case Qt::Key_Enter:
    finish_gesture(pointer_);
    return true;
  default:
    return take_count(event);
  }
}

bool Canvas::take_count(const QKeyEvent& event) {
  if (!gesture_ || gesture_->count() == 0) return false;
  const QString typed = event.text();
  int wanted = gesture_->count();
  if (typed == QLatin1String("+"))
    ++wanted;
  else if (typed == QLatin1String("-"))
    --wanted;
  else if (typed.size() == 1 && typed.front() >= QLatin1Char('0') && typed.front() <= QLatin1Char('9'))
    wanted = typed_ * 10 + typed.front().digitValue();
  else
    return false;
  gesture_->set_count(wanted);
  typed_ = wanted > kMostAtOnce / 10 ? 0 : wanted; // the next digit begins a new number
  move_gesture(pointer_);
  return true;
}

void Canvas::carry(QPoint global) {
  if (gesture_) move_gesture(viewport()->mapFromGlobal(global));
}

void Canvas::put_down(QPoint global) {
  if (!gesture_) return;
  const QPoint at = viewport()->mapFromGlobal(global);
  if (viewport()->rect().contains(at))
    finish_gesture(at);
  else
    cancel();
}

QString Canvas::gesture_words() const { return gesture_ ? gesture_->words() : QString(); }

} // namespace snug
