#include "ui/canvas/repaint.h"

#include "ui/diagram/paint.h"
#include "ui/theme/theme.h"

#include <algorithm>

namespace snug {

namespace {

// Where a filled box has its colour, whole pixels away from its edge and corners.
QRectF inside(const BoxShape& s, qreal pixel) {
  const qreal edge = std::max<qreal>(s.radius, s.stroke_width / 10.0) + pixel + 1;
  return as_rect(s.box).adjusted(edge, edge, -edge, -edge);
}

// Of rectangles that are not turned inside out.
bool meet(const QRectF& a, const QRectF& b) {
  return a.left() < b.right() && b.left() < a.right() && a.top() < b.bottom() && b.top() < a.bottom();
}

} // namespace

Repaint::Repaint(std::vector<QRectF> parts, qreal pixel) : parts_(std::move(parts)), pixel_(pixel) {
  for (const QRectF& r : parts_) all_ = all_.united(r);
}

bool Repaint::touches(const QRectF& r) const {
  return meet(r, all_) &&
         std::any_of(parts_.begin(), parts_.end(), [&r](const QRectF& part) { return meet(r, part); });
}

bool Repaint::is_surface(const BoxShape& s) const {
  if (s.fill == Ink::none) return false;
  const qreal out = s.stroke_width / 20.0 + pixel_ + 1;
  const QRectF all = as_rect(s.box).adjusted(-out, -out, out, out), in = inside(s, pixel_);
  return std::all_of(parts_.begin(), parts_.end(),
                     [&](const QRectF& part) { return in.contains(part) || !all.intersects(part); });
}

// The last box that covers everything; 0: none may.
std::size_t Repaint::ground_of(std::span<const AnyShape> shapes) const {
  for (std::size_t i = shapes.size(); i-- > 0;) {
    const auto* box = std::get_if<BoxShape>(&shapes[i]);
    if (box && box->fill != Ink::none && inside(*box, pixel_).contains(all_)) return i;
  }
  return 0;
}

std::int64_t Repaint::paint(QPainter& painter, std::span<const AnyShape> shapes, const Palette& palette,
                            bool with_texts) const {
  const QPainter::RenderHints hints = painter.renderHints();
  std::int64_t painted = 0;
  for (const AnyShape& s : shapes.subspan(ground_of(shapes))) {
    if (!with_texts && std::holds_alternative<TextShape>(s)) continue;
    if (!touches(bounds(s))) continue;
    ++painted;
    const auto* box = std::get_if<BoxShape>(&s);
    if (box && is_surface(*box)) {
      painter.setRenderHint(QPainter::Antialiasing, false);
      painter.fillRect(inside(*box, 0), colour(palette, box->fill));
      painter.setRenderHints(hints);
    } else {
      snug::paint(painter, s, palette);
    }
  }
  return painted;
}

} // namespace snug
