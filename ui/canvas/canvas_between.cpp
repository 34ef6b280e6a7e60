// Machines dragged from one window into another: there they are copies, as if pasted, and their consequences
// are shown before they are put down.

#include "core/gesture/clip.h"
#include "core/gesture/names.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/part_gesture.h"
#include "ui/session/words.h"

#include <QDrag>
#include <QDragEnterEvent>
#include <QMimeData>

namespace snug {

namespace {

constexpr QPointF kOffView(-1e6, -1e6); // of the viewport

bool has_machines(const QDropEvent& event) { return event.mimeData()->hasFormat(as_qt(kClipType)); }

} // namespace

// The hand leaves the window with machines in it.
bool Canvas::takes_out(const QMouseEvent& event) const {
  return is_pressed_ && !placing_ && !gesture_->machines().empty() &&
         !window()->frameGeometry().contains(event.globalPosition().toPoint());
}

// What is dragged is over another window, or none: this one says nothing of it.
bool Canvas::is_out() const { return away_ && pointer_ == kOffView; }

void Canvas::take_out() {
  const std::vector<MachineId> machines = gesture_->machines();
  const std::vector<AnyId> ids(machines.begin(), machines.end());
  const auto text = copy_machines(session_.lab(), ids);
  if (!text) return session_.tell(text.error());
  const QRect card = on_view(box_of(before_, ids.front())).toAlignedRect() & viewport()->rect();
  auto* drag = new QDrag(viewport());
  drag->setMimeData(machine_formats(*text));
  away_ = true;
  go_off_view();
  if (!card.isEmpty()) drag->setPixmap(viewport()->grab(card));
  drag->exec(Qt::CopyAction | Qt::MoveAction, Qt::CopyAction);
  away_ = is_pressed_ = false;
  cancel(); // unless it was put down here
}

void Canvas::go_off_view() {
  update_duties();
  move_gesture(kOffView);
}

void Canvas::dragEnterEvent(QDragEnterEvent* event) {
  if (!has_machines(*event) || (gesture_ && !away_)) return event->ignore();
  if (!away_) {
    auto part = read_copied(event->mimeData()->data(as_qt(kClipType)).toStdString());
    if (!part) {
      session_.tell(part.error());
      return event->ignore();
    }
    begin(place_copies(session_, std::move(*part)));
  }
  dragMoveEvent(event);
}

void Canvas::dragMoveEvent(QDragMoveEvent* event) {
  if (!gesture_ || !has_machines(*event)) return event->ignore();
  if (is_out()) update_duties();
  move_gesture(event->position());
  event->setDropAction(away_ ? Qt::MoveAction : Qt::CopyAction);
  event->accept();
}

void Canvas::dragLeaveEvent(QDragLeaveEvent*) {
  if (!gesture_) return;
  if (away_) return go_off_view();
  cancel();
}

void Canvas::dropEvent(QDropEvent* event) {
  if (!gesture_ || !has_machines(*event)) return event->ignore();
  event->setDropAction(away_ ? Qt::MoveAction : Qt::CopyAction);
  event->accept();
  finish_gesture(event->position());
}

QMimeData* machine_formats(const std::string& copied) {
  auto* formats = new QMimeData;
  formats->setData(as_qt(kClipType), QByteArray(copied.data(), static_cast<qsizetype>(copied.size())));
  formats->setText(as_qt(copied));
  return formats;
}

} // namespace snug
