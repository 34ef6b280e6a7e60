#include "ui/canvas/shapes.h"

#include <QLineF>

#include <algorithm>
#include <cmath>

namespace snug {

namespace {

constexpr qreal kTenth = 10;
constexpr qreal kTickReach = 6; // half the width of cross strokes, rounded up

QRectF spread(const QRectF& r, qreal by) { return r.adjusted(-by, -by, by, by); }

struct Bounds {
  QRectF operator()(const BoxShape& s) const {
    return spread(as_rect(s.box), s.stroke_width / kTenth / 2 + 1);
  }
  QRectF operator()(const LineShape& s) const {
    const qreal half = s.dash == Dash::ticks ? kTickReach : s.width / kTenth / 2;
    return spread(QRectF(QPointF(s.from.x, s.from.y), QPointF(s.to.x, s.to.y)).normalized(), half + 1);
  }
  QRectF operator()(const CircleShape& s) const {
    const qreal r = s.radius + s.stroke_width / kTenth / 2 + 1;
    return {s.centre.x - r, s.centre.y - r, 2 * r, 2 * r};
  }
  QRectF operator()(const PolygonShape& s) const {
    QRectF all;
    for (const Point p : s.points) all = all.united(QRectF(p.x, p.y, 1, 1));
    return spread(all, s.stroke_width / kTenth / 2 + 1);
  }
  QRectF operator()(const TextShape& s) const {
    const QRectF line(s.box.x, s.baseline - s.size - 1, s.box.w, s.size * 1.5 + 2);
    return spread(line.united(as_rect(s.box)), 2);
  }
};

qreal distance(QPointF p, QPointF a, QPointF b) {
  const QPointF along = b - a;
  const qreal length2 = QPointF::dotProduct(along, along);
  const qreal t = length2 > 0 ? std::clamp(QPointF::dotProduct(p - a, along) / length2, 0.0, 1.0) : 0.0;
  return QLineF(p, a + t * along).length();
}

// How far a point is from the ink of a shape; 0: on it.
struct Away {
  QPointF at;
  qreal operator()(const BoxShape& s) const {
    const QRectF r = as_rect(s.box);
    const qreal dx = std::max({r.left() - at.x(), 0.0, at.x() - r.right()});
    const qreal dy = std::max({r.top() - at.y(), 0.0, at.y() - r.bottom()});
    return std::hypot(dx, dy);
  }
  qreal operator()(const LineShape& s) const {
    return std::max(0.0, distance(at, QPointF(s.from.x, s.from.y), QPointF(s.to.x, s.to.y)) -
                             s.width / kTenth / 2);
  }
  qreal operator()(const CircleShape& s) const {
    return std::max(0.0, QLineF(at, QPointF(s.centre.x, s.centre.y)).length() - s.radius);
  }
  qreal operator()(const PolygonShape& s) const {
    const QRectF r = Bounds()(s);
    return r.contains(at)
               ? 0
               : Away{at}(BoxShape{{}, Box{int(r.x()), int(r.y()), int(r.width()), int(r.height())}});
  }
  qreal operator()(const TextShape& s) const { return Bounds()(s).contains(at) ? 0 : 1e9; }
};

bool is_large(Part p) {
  return p == Part::machine || p == Part::room || p == Part::frame || p == Part::lan || p == Part::meter;
}

bool may_be_hit(const Shape& s) {
  return s.of && s.part != Part::legend && s.part != Part::title_block && s.part != Part::sheet &&
         s.part != Part::outside;
}

} // namespace

QRectF bounds(const AnyShape& s) { return std::visit(Bounds(), s); }

const Shape& shape_of(const AnyShape& s) {
  return std::visit([](const auto& x) -> const Shape& { return x; }, s);
}

Hit hit(const Drawing& drawing, QPointF at, qreal reach) {
  Hit best;
  qreal nearest = reach;
  for (std::size_t i = drawing.shapes.size(); i-- > 0;) {
    const AnyShape& s = drawing.shapes[i];
    const Shape& what = shape_of(s);
    if (!may_be_hit(what) || !spread(bounds(s), reach).contains(at)) continue;
    const qreal away = std::visit(Away{at}, s);
    if (is_large(what.part) && away > 0) continue;
    if (away == 0) return best.of && nearest <= 2 && is_large(what.part) ? best : Hit{what.of, what.part, i};
    if (away <= nearest) {
      nearest = away;
      best = {what.of, what.part, i};
    }
  }
  return best;
}

AnyId ground(const Drawing& drawing, QPointF at) {
  const auto found = std::find_if(drawing.groups.rbegin(), drawing.groups.rend(), [&](const Group& g) {
    return (g.part == Part::machine || g.part == Part::frame) && as_rect(g.box).contains(at);
  });
  return found == drawing.groups.rend() ? AnyId{} : found->of;
}

Box box_of(const Drawing& drawing, AnyId id) {
  for (const Group& g : drawing.groups)
    if (g.of == id) return g.box;
  return {};
}

} // namespace snug
