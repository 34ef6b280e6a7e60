#pragma once
// The whole lab in small, in a corner of the picture where no machine is, while the picture shows only a part
// of it. A click or a drag goes there. With machines in all corners it is faint, and the hand goes through to
// them, but for a while after the view has moved.

#include "ui/canvas/canvas.h"

#include <QPixmap>
#include <QTimer>

namespace snug {

class Minimap : public QWidget {
 public:
  explicit Minimap(Canvas& canvas); // is a child of it
  // What the view shows, in pixels of the map.
  QRectF frame() const;
  bool is_faint() const { return faint_; }

 protected:
  bool eventFilter(QObject*, QEvent*) override;
  void paintEvent(QPaintEvent*) override;
  void mousePressEvent(QMouseEvent*) override;
  void mouseMoveEvent(QMouseEvent*) override;

 private:
  void place();  // shown, as large as it must be, where it covers nothing
  void moved();  // the view has: it is seen for a while
  void settle(); // in a corner
  void set_faint(bool);
  bool covers_machines(const QRect&) const;
  std::ptrdiff_t words_below(const QRect&) const;
  void stale();
  void go_to(QPointF on_map);
  qreal scale() const;

  Canvas& canvas_;
  QPixmap picture_; // null: to be drawn when it is shown next
  QTimer awake_;    // runs while it is seen for having been moved
  int corner_ = 0;
  bool faint_ = false;
};

} // namespace snug
