#pragma once
// The words beside the pointer during a gesture. A line is laid out once, for measuring and for painting, and
// kept for a while: as the hand goes back and forth, it is said again.

#include <QColor>
#include <QPainter>
#include <QString>
#include <QTextLayout>

#include <memory>
#include <vector>

namespace snug {

class GhostWords {
 public:
  void take(const QString& title, const QString& words, Qt::LayoutDirection);
  // Pixels, with the space around them.
  QSizeF size() const { return size_; }
  void paint(QPainter&, QPointF corner, const QColor& title, const QColor& words) const;

 private:
  struct Line {
    QString text;
    bool is_title = false;
    std::unique_ptr<QTextLayout> layout;
    qreal height = 0, width = 0;
  };
  Line laid_out(const QString& text, bool is_title);
  std::vector<Line> lines_; // the title first
  std::vector<Line> kept_;  // said before, the oldest first
  QString says_;
  Qt::LayoutDirection direction_ = Qt::LeftToRight;
  QSizeF size_;
};

} // namespace snug
