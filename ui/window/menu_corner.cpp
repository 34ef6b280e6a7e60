#include "ui/window/menu_corner.h"

#include <QAction>
#include <QEvent>
#include <QHBoxLayout>
#include <QMenuBar>
#include <QToolButton>

#include <algorithm>

namespace snug {

namespace {

constexpr int kLeastFind = 90;

} // namespace

MenuCorner::MenuCorner(QMenuBar& menus, QWidget& find)
    : QWidget(&menus), menus_(menus), find_(find), row_(new QHBoxLayout(this)),
      find_width_(find.minimumWidth()) {
  row_->setContentsMargins(0, 3, 12, 3);
  row_->addWidget(&find);
  menus.installEventFilter(this);
}

QToolButton* MenuCorner::add(QAction& action, int place) {
  auto* button = new QToolButton(this);
  button->setDefaultAction(&action);
  button->setToolButtonStyle(Qt::ToolButtonTextOnly);
  row_->addWidget(button);
  buttons_.push_back({button, place});
  std::stable_sort(buttons_.begin(), buttons_.end(),
                   [](const Button& a, const Button& b) { return a.place > b.place; });
  return button;
}

bool MenuCorner::eventFilter(QObject* of, QEvent* event) {
  const QEvent::Type type = event->type();
  if (type == QEvent::FontChange || type == QEvent::StyleChange) widest_ = 0;
  if (type == QEvent::Resize || type == QEvent::FontChange || type == QEvent::StyleChange) fit();
  return QWidget::eventFilter(of, event);
}

bool MenuCorner::event(QEvent* event) {
  if (event->type() == QEvent::Show || event->type() == QEvent::LayoutRequest) fit();
  return QWidget::event(event);
}

// Mirrored, the menus' own hint is as wide as the window: there they count as wide as they were at most.
int MenuCorner::menus_width() {
  if (layoutDirection() == Qt::LeftToRight) return menus_.sizeHint().width() - sizeHint().width();
  QRect all;
  for (QAction* a : menus_.actions()) all |= menus_.actionGeometry(a);
  widest_ = std::max(widest_, all.width() + 2 * (menus_.width() - 1 - all.right()));
  return widest_;
}

// Not before it is seen: until then the window has no width of its own.
void MenuCorner::fit() {
  if (!isVisible()) return;
  const QMargins edge = row_->contentsMargins();
  int over = menus_width() - menus_.width();
  over += edge.left() + edge.right() + find_width_;
  for (const Button& b : buttons_) over += b.button->sizeHint().width() + row_->spacing();
  for (const Button& b : buttons_) {
    b.button->setVisible(over <= 0);
    if (over > 0) over -= b.button->sizeHint().width() + row_->spacing();
  }
  find_.setMinimumWidth(std::clamp(find_width_ - std::max(over, 0), kLeastFind, find_width_));
}

} // namespace snug
