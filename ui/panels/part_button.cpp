#include "ui/panels/part_button.h"

#include <QGuiApplication>
#include <QMouseEvent>
#include <QStyleHints>

#include <utility>

namespace snug {

PartButton::PartButton(Canvas& canvas, Make make, QWidget* parent)
    : QPushButton(parent), canvas_(canvas), make_(std::move(make)) {
  setProperty("role", QStringLiteral("part"));
  setCursor(Qt::OpenHandCursor);
  connect(this, &QPushButton::clicked, this, [this] {
    if (std::exchange(by_key_, false)) return canvas_.begin_by_key(make_());
    canvas_.begin(make_());
    canvas_.setFocus();
  });
}

// Its two lines are never squeezed: the panel scrolls. The sheet's least height would win over a hint.

void PartButton::showEvent(QShowEvent* event) {
  QPushButton::showEvent(event);
  setMinimumHeight(sizeHint().height());
}

void PartButton::mousePressEvent(QMouseEvent* event) {
  pressed_at_ = event->pos();
  dragging_ = by_key_ = false;
  QPushButton::mousePressEvent(event);
}

void PartButton::mouseMoveEvent(QMouseEvent* event) {
  const bool far =
      (event->pos() - pressed_at_).manhattanLength() >= QGuiApplication::styleHints()->startDragDistance();
  if (!dragging_ && (event->buttons() & Qt::LeftButton) != 0 && far) {
    dragging_ = true;
    setDown(false);
    canvas_.begin(make_());
  }
  if (dragging_) canvas_.carry(event->globalPosition().toPoint());
}

void PartButton::mouseReleaseEvent(QMouseEvent* event) {
  if (!dragging_) return QPushButton::mouseReleaseEvent(event);
  dragging_ = false;
  canvas_.put_down(event->globalPosition().toPoint());
}

void PartButton::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && canvas_.is_busy()) {
    dragging_ = false;
    return canvas_.cancel();
  }
  if (dragging_ && canvas_.take_count(*event)) return;
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  by_key_ = enter || event->key() == Qt::Key_Space;
  if (enter) return click();
  QPushButton::keyPressEvent(event);
}

} // namespace snug
