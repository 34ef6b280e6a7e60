#pragma once
// The whole lab in small, in the lower right corner of the picture, while the picture shows only a part of
// it. A click or a drag goes there.

#include "ui/canvas/canvas.h"

#include <QPixmap>

namespace snug {

class Minimap : public QWidget {
 public:
  explicit Minimap(Canvas& canvas); // is a child of it
  // What the view shows, in pixels of the map.
  QRectF frame() const;

 protected:
  bool eventFilter(QObject*, QEvent*) override;
  void paintEvent(QPaintEvent*) override;
  void mousePressEvent(QMouseEvent*) override;
  void mouseMoveEvent(QMouseEvent*) override;

 private:
  void place();
  void stale();
  void go_to(QPointF on_map);
  qreal scale() const;

  Canvas& canvas_;
  QPixmap picture_; // null: to be drawn when it is shown next
};

} // namespace snug
