#include "ui/canvas/dashes.h"

#include <algorithm>
#include <cmath>

namespace snug {

namespace {

constexpr int kQuarter = 90 * 16; // a degree is 16 of drawArc

// Strokes from `from` to `to`, as far as they meet what is seen; `fill` gets where each begins and ends.
template <typename Fill>
void strokes(const DashedBox& b, qreal from, qreal to, qreal seen_from, qreal seen_to, const Fill& fill) {
  const qreal step = b.stroke + b.gap;
  const qreal skipped = std::max(0.0, std::floor((seen_from - from) / step));
  for (qreal at = from + skipped * step; at < std::min(to, seen_to); at += step)
    fill(at, std::min(at + b.stroke, to));
}

void paint_corner(QPainter& painter, QPointF corner, qreal side, int start, const QRectF& seen) {
  const QRectF around(corner, QSizeF(side, side));
  if (around.adjusted(-3, -3, 3, 3).intersects(seen)) painter.drawArc(around, start, kQuarter);
}

} // namespace

void paint_dashed(QPainter& painter, const DashedBox& b, const QColor& ink, const QRectF& seen) {
  const QRectF& r = b.box;
  const QPainter::RenderHints hints = painter.renderHints();
  const qreal half = b.width / 2;
  painter.setRenderHint(QPainter::Antialiasing, false);
  for (const qreal y : {r.top(), r.bottom()})
    if (y + half >= seen.top() && y - half <= seen.bottom())
      strokes(b, r.left() + b.radius, r.right() - b.radius, seen.left(), seen.right(),
              [&](qreal x, qreal end) { painter.fillRect(QRectF(x, y - half, end - x, b.width), ink); });
  for (const qreal x : {r.left(), r.right()})
    if (x + half >= seen.left() && x - half <= seen.right())
      strokes(b, r.top() + b.radius, r.bottom() - b.radius, seen.top(), seen.bottom(),
              [&](qreal y, qreal end) { painter.fillRect(QRectF(x - half, y, b.width, end - y), ink); });
  painter.setRenderHints(hints);
  painter.setPen(QPen(ink, b.width, Qt::SolidLine, Qt::FlatCap));
  painter.setBrush(Qt::NoBrush);
  const qreal side = 2 * b.radius;
  paint_corner(painter, {r.right() - side, r.top()}, side, 0, seen);
  paint_corner(painter, r.topLeft(), side, kQuarter, seen);
  paint_corner(painter, {r.left(), r.bottom() - side}, side, 2 * kQuarter, seen);
  paint_corner(painter, {r.right() - side, r.bottom() - side}, side, 3 * kQuarter, seen);
}

} // namespace snug
