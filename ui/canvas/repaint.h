#pragma once
// Which shapes have to be painted where a part of the view is painted again, and which of them are nothing
// but their surface there.

#include "core/layout/palette.h"
#include "ui/canvas/shapes.h"

#include <QPainter>

#include <cstdint>

namespace snug {

class Repaint {
 public:
  // Parts of the drawing; `pixel`: how many of its units one of the view's is.
  Repaint(std::vector<QRectF> parts, qreal pixel);

  bool touches(const QRectF&) const;
  // Paints the shapes in their order, without those that another one hides; the painter's units are the
  // drawing's. Returns how many.
  std::int64_t paint(QPainter&, std::span<const AnyShape>, const Palette&, bool with_texts) const;

 private:
  bool is_surface(const BoxShape&) const;
  std::size_t ground_of(std::span<const AnyShape>) const;
  std::vector<QRectF> parts_;
  QRectF all_; // around them
  qreal pixel_;
};

} // namespace snug
