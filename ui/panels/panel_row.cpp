#include "ui/panels/panel_row.h"

#include <QKeyEvent>
#include <QMouseEvent>

namespace snug {

PanelRow::PanelRow(QWidget* parent, const QString& name, std::function<void()> go)
    : QFrame(parent), go_(std::move(go)) {
  setObjectName(name);
  setFocusPolicy(Qt::TabFocus);
  setCursor(Qt::PointingHandCursor);
}

void PanelRow::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) go_();
}

void PanelRow::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter || event->key() == Qt::Key_Space)
    return go_();
  QFrame::keyPressEvent(event);
}

QLabel* wrapped_text(const QString& text, const char* tone, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setTextFormat(Qt::PlainText);
  label->setWordWrap(true);
  label->setProperty("tone", QLatin1String(tone));
  return label;
}

} // namespace snug
