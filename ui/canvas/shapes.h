#pragma once
// Where shapes of a drawing are, which one is under a point, and what differs between two drawings.

#include "core/layout/drawing.h"

#include <QRectF>

#include <span>

namespace snug {

inline QRectF as_rect(const Box& b) { return {qreal(b.x), qreal(b.y), qreal(b.w), qreal(b.h)}; }

// Everything that painting the shape touches.
QRectF bounds(const AnyShape&);
const Shape& shape_of(const AnyShape&);

struct Hit {
  AnyId of;
  Part part = Part::sheet;
  std::size_t shape = 0;
  explicit operator bool() const { return bool(of); }
};
// The topmost shape of an element at a point; lines and marks are hit within `reach` pixels of them, what is
// exactly under the point first.
Hit hit(const Drawing&, QPointF at, qreal reach);

// The innermost machine, the frame or nothing at a point.
AnyId ground(const Drawing&, QPointF at);
// Box of an element's group; empty when it is not drawn.
Box box_of(const Drawing&, AnyId);

// What `within` shows differently when one drawing takes the place of the other: the bounds of shapes that
// only one of them has; of a shape that only grew, where it did. Empty when they are equal there.
std::vector<QRectF> differences(const Drawing& before, const Drawing& after, const QRectF& within);

} // namespace snug
