#include "ui/window/flow_layout.h"

#include <algorithm>

namespace snug {

FlowLayout::FlowLayout(QWidget* parent, int gap) : QLayout(parent), gap_(gap) {
  setContentsMargins(0, 0, 0, 0);
}

FlowLayout::~FlowLayout() {
  for (QLayoutItem* item : items_) delete item;
}

void FlowLayout::addItem(QLayoutItem* item) { items_.push_back(item); }

QLayoutItem* FlowLayout::itemAt(int at) const {
  return at >= 0 && at < count() ? items_[static_cast<std::size_t>(at)] : nullptr;
}

QLayoutItem* FlowLayout::takeAt(int at) {
  QLayoutItem* item = itemAt(at);
  if (item) items_.erase(items_.begin() + at);
  return item;
}

int FlowLayout::lay(const QRect& room, bool place) const {
  int x = room.x(), y = room.y(), line = 0;
  for (QLayoutItem* item : items_) {
    if (item->isEmpty()) continue; // hidden
    const QSize size = item->sizeHint();
    if (x > room.x() && x + size.width() > room.right() + 1) {
      x = room.x();
      y += line + gap_;
      line = 0;
    }
    if (place) item->setGeometry({QPoint(x, y), size});
    x += size.width() + gap_;
    line = std::max(line, size.height());
  }
  return y + line - room.y();
}

int FlowLayout::heightForWidth(int width) const { return lay({0, 0, width, 0}, false); }

QSize FlowLayout::minimumSize() const {
  QSize size;
  for (const QLayoutItem* item : items_) size = size.expandedTo(item->minimumSize());
  return size;
}

QSize FlowLayout::sizeHint() const { return minimumSize(); }

void FlowLayout::setGeometry(const QRect& room) {
  QLayout::setGeometry(room);
  lay(room, true);
}

} // namespace snug
