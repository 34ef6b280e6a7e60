#include "ui/canvas/canvas.h"
#include "ui/canvas/dashes.h"
#include "ui/canvas/repaint.h"
#include "ui/diagram/paint.h"
#include "ui/theme/theme.h"

#include <QPaintEvent>
#include <QPainter>
#include <QPainterPath>
#include <QtMath>

#include <algorithm>

namespace snug {

namespace {

constexpr qreal kTextFrom = 0.35; // below this zoom letters are not painted
constexpr int kGhostGap = 14;     // from the pointer
constexpr int kGhostCorner = 8;
constexpr int kRingReach = 16;                  // on either side of an edge, of rings, marks and handles
constexpr qreal kRingOut = 7, kRingCorner = 11; // of a ring alone, over the edge, in the drawing's units

// What a ring must not cover: badge and tack, which stand on the edge of the card.
std::vector<const AnyShape*> marks_of(const Drawing& drawing, AnyId id) {
  std::vector<const AnyShape*> out;
  const auto group =
      std::find_if(drawing.groups.begin(), drawing.groups.end(), [id](const Group& g) { return g.of == id; });
  if (group == drawing.groups.end()) return out;
  for (std::uint32_t i = group->first; i < group->end; ++i) {
    const snug::Shape& s = shape_of(drawing.shapes[i]);
    if (s.of == id && (s.part == Part::badge || s.part == Part::held)) out.push_back(&drawing.shapes[i]);
  }
  return out;
}

} // namespace

void Canvas::paintEvent(QPaintEvent* event) {
  QPainter painter(viewport());
  const Drawing* moving = glide_.shown();
  const QRegion seen = moving ? event->region() : event->region() - covered_by_ghost();
  // Dashes without antialiasing come out otherwise in pieces.
  if (gesture_ && !moving && zoom_ >= kTextFrom && KeptPicture::suits(painter)) {
    kept_.show(painter, viewport()->size(), seen,
               [this](QPainter& onto, const QRegion& part) { paint_picture(onto, part, drawing_); });
  } else {
    kept_.forget();
    paint_picture(painter, seen, moving ? *moving : drawing_);
  }
  ++painted_.frames;
  if (QRegion(viewport()->rect()).subtracted(event->region()).isEmpty()) ++painted_.whole;
  if (moving) return;
  take_units(painter);
  paint_over(painter, Repaint(parts_of(seen), 1 / zoom_));
}

// The drawing's units.
void Canvas::take_units(QPainter& painter) const {
  painter.setRenderHint(QPainter::TextAntialiasing);
  painter.translate(on_view(QPointF(0, 0)));
  painter.scale(zoom_, zoom_);
}

std::vector<QRectF> Canvas::parts_of(const QRegion& view) const {
  std::vector<QRectF> out;
  for (const QRect& r : view)
    out.emplace_back(on_drawing(r.topLeft()), on_drawing(r.bottomRight() + QPoint(1, 1)));
  return out;
}

// Without anything that stands over it. The painter is clipped to the part.
void Canvas::paint_picture(QPainter& painter, const QRegion& part, const Drawing& drawing) {
  const bool small = zoom_ < kTextFrom;
  painter.save();
  painter.fillRect(part.boundingRect(), colour(colours(), Ink::sheet));
  painter.setRenderHint(QPainter::Antialiasing, !small);
  take_units(painter);
  painted_.shapes += Repaint(parts_of(part), 1 / zoom_).paint(painter, drawing.shapes, colours(), !small);
  painter.restore();
}

// Of a segment a band along each stretch of its rail, between the words over and below it: a ring around all
// would cross its neighbours' words.
std::vector<QRectF> Canvas::rings_of(AnyId id) const {
  constexpr qreal kAround = 4, kAroundRail = 4.5, kBesideRail = 5;
  if (id.kind != Kind::segment) {
    const snug::Box box = box_of(drawing_, id);
    return box.w == 0 ? std::vector<QRectF>{}
                      : std::vector{as_rect(box).adjusted(-kAround, -kAround, kAround, kAround)};
  }
  std::vector<QRectF> out;
  for (const AnyShape& s : drawing_.shapes)
    if (const auto* line = std::get_if<LineShape>(&s); line && line->of == id && line->part == Part::rail)
      out.push_back(QRectF(QPointF(line->from.x, line->from.y), QPointF(line->to.x, line->to.y))
                        .normalized()
                        .adjusted(-kBesideRail, -kAroundRail, kBesideRail, kAroundRail));
  return out;
}

QRectF Canvas::ringed_box(AnyId id) const {
  QRectF all = as_rect(box_of(drawing_, id));
  for (const QRectF& r : rings_of(id)) all = all.united(r);
  return all;
}

void Canvas::paint_ring(QPainter& painter, AnyId id, Ink ink, int width, bool dashed) {
  constexpr qreal kMostCorner = 10, kCrisp = 1.5; // pixels that a stroke must have to be filled
  for (const QRectF& around : rings_of(id)) {
    const qreal corner = std::min(kMostCorner, around.height() / 2);
    if (id.kind == Kind::segment) {
      QColor band = colour(colours(), ink);
      painter.setPen(QPen(band, width > 1 ? 1.2 : 0.8));
      constexpr int kFaint = 56; // of 255
      band.setAlpha(kFaint);
      painter.setBrush(band);
      painter.drawRoundedRect(around, corner, corner);
      continue;
    }
    if (dashed && width * zoom_ >= kCrisp) {
      paint_dashed(painter, {around, corner, qreal(width), 3.0 * width, 2.0 * width}, colour(colours(), ink),
                   as_rect(seen()));
    } else {
      QPen pen(colour(colours(), ink), width);
      if (dashed) pen.setDashPattern({3, 2});
      painter.setPen(pen);
      painter.setBrush(Qt::NoBrush);
      painter.drawRoundedRect(around, corner, corner);
    }
  }
  paint_marks(painter, id);
}

void Canvas::paint_marks(QPainter& painter, AnyId id) {
  for (const AnyShape* s : marks_of(drawing_, id)) paint(painter, *s, colours());
}

void Canvas::paint_over(QPainter& painter, const Repaint& repaint) {
  const auto ring = [&](AnyId id, Ink ink, int width, bool dashed) {
    if (repaint.touches(ringed_box(id).adjusted(-kRingOut, -kRingOut, kRingOut, kRingOut)))
      paint_ring(painter, id, ink, width, dashed);
  };
  painter.setRenderHint(QPainter::Antialiasing);
  if (hover_ && !gesture_ && !session_.is_selected(hover_)) ring(hover_, Ink::muted, 1, false);
  paint_way(painter);
  for (const AnyId id : outlined()) ring(id, Ink::info, 2, false);
  if (focus_ && hasFocus() && !gesture_ && !session_.is_selected(focus_)) ring(focus_, Ink::text, 2, true);
  if (!gesture_) return paint_handles(painter);
  if (gesture_->target() && !gesture_->duty())
    ring(gesture_->target(), gesture_->is_refused() ? Ink::error : Ink::info, 3, true);
  paint_duties(painter);
  const QPointF at = on_drawing(pointer_);
  if (const auto from = gesture_->line_from()) {
    painter.setPen(QPen(colour(colours(), Ink::info), 2, Qt::DashLine));
    painter.drawLine(*from, at);
  }
  if (const auto from = gesture_->band_from()) {
    QColor fill = colour(colours(), Ink::info);
    painter.setPen(QPen(fill, 1));
    fill.setAlpha(24);
    painter.setBrush(fill);
    painter.drawRect(QRectF(*from, at).normalized());
  }
  painter.resetTransform();
  paint_ghost(painter);
}

// What somebody has is outlined whole, what nobody has is faint.
void Canvas::paint_duties(QPainter& painter) {
  if (!gesture_->shows_duties() || is_out()) return;
  for (const DutySlot& s : gesture_->duties()) {
    const bool over = gesture_->duty() == &s;
    const Ink ink = over        ? gesture_->is_refused() ? Ink::error : Ink::info
                    : s.is_held ? Ink::text
                                : Ink::muted;
    QPen pen(colour(colours(), ink), over ? 2 : 1);
    if (!s.is_held && !over) pen.setDashPattern({4, 3});
    const qreal scale = slot_scale();
    pen.setWidthF(pen.widthF() * scale);
    painter.setPen(pen);
    painter.setBrush(colour(colours(), Ink::card));
    painter.drawRoundedRect(s.box, 5 * scale, 5 * scale);
    painter.setFont(diagram_font(qRound(11 * scale), Weight::regular));
    painter.drawText(s.box, Qt::AlignCenter, s.words);
  }
}

QRectF Canvas::ghost_box() const {
  if (!gesture_ || gesture_->title().isEmpty() || is_out()) return {};
  ghost_.take(gesture_->title(), gesture_->words(), layoutDirection());
  return off_target(QRectF(pointer_ + QPointF(kGhostGap, kGhostGap), ghost_.size()));
}

// What need not be painted under it: all but its edge and corners.
QRegion Canvas::covered_by_ghost() const {
  const QRectF box = ghost_box();
  if (box.isNull()) return {};
  const QRect all = box.toAlignedRect();
  return all.adjusted(kGhostCorner + 1, 3, -kGhostCorner - 1, -3);
}

// Beside the pointer, on the view, and where it does not hide what the hand aims at: below, above, left or
// right of it.
QRectF Canvas::off_target(QRectF box) const {
  const QRectF view(viewport()->rect());
  const auto into = [&view](QRectF r) {
    r.moveLeft(std::clamp(r.left(), view.left(), std::max(view.left(), view.right() - r.width())));
    r.moveTop(std::clamp(r.top(), view.top(), std::max(view.top(), view.bottom() - r.height())));
    return r;
  };
  if (box.right() > view.right()) box.moveRight(pointer_.x() - kGhostGap);
  if (box.bottom() > view.bottom()) box.moveBottom(pointer_.y() - kGhostGap);
  box = into(box);
  if (gesture_->target().kind != Kind::machine) return box;
  const QRectF target = on_view(box_of(drawing_, gesture_->target())).adjusted(-6, -6, 6, 6);
  if (target.isNull() || !box.intersects(target)) return box;
  QRectF places[]{box, box, box, box};
  places[0].moveTop(target.bottom() + 2);
  places[1].moveRight(target.left() - 2);
  places[2].moveLeft(target.right() + 2);
  places[3].moveBottom(target.top() - 2);
  for (const QRectF& p : places)
    if (const QRectF in = into(p); !in.intersects(target)) return in;
  return box;
}

void Canvas::paint_ghost(QPainter& painter) {
  const QRectF box = ghost_box().toAlignedRect();
  if (box.isNull()) return;
  const Ink ink = gesture_->is_refused() ? Ink::error : Ink::info;
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour(colours(), Ink::card));
  painter.drawRoundedRect(box, kGhostCorner, kGhostCorner);
  paint_dashed(painter, {box, kGhostCorner, 2, 7, 4}, colour(colours(), ink), box.adjusted(-2, -2, 2, 2));
  ghost_.paint(painter, box.topLeft(), colour(colours(), ink),
               colour(colours(), gesture_->is_refused() ? Ink::error : Ink::text));
}

// Only what a moved pointer changes: the words beside it, its line or band.
void Canvas::update_over() {
  QRectF now = ghost_box();
  if (gesture_) {
    for (const auto& from : {gesture_->line_from(), gesture_->band_from()})
      if (from) now = now.united(QRectF(on_view(*from), pointer_).normalized());
  }
  take_ring(gesture_ ? gesture_->target() : AnyId{});
  for (const QRectF& r : {over_, now}) viewport()->update(r.toAlignedRect().adjusted(-4, -4, 4, 4));
  over_ = now;
}

// The element may have another size or place now than when its ring was painted, or the view another zoom.
void Canvas::take_ring(AnyId id) {
  QRegion ring = ring_of(id);
  if (id == ringed_ && ring == ring_) return;
  viewport()->update(ring_ + ring);
  ringed_ = id;
  ring_ = std::move(ring);
}

// Of the ring around what a gesture aims at, which stands just over the edge, and of the marks over it.
QRegion Canvas::ring_of(AnyId id) const {
  if (id.kind == Kind::segment) return band_of(id);
  const snug::Box box = box_of(drawing_, id);
  if (box.w == 0) return {};
  const int out = qCeil(kRingOut * zoom_), corner = qCeil(kRingCorner * zoom_);
  const QRect on = on_view(box).toAlignedRect(), all = on.adjusted(-out, -out, out, out);
  QRegion ring = QRegion(all) - on.adjusted(1, 1, -1, -1); // a pixel is shared with the edge
  for (const QPoint p : {all.topLeft(), all.topRight(), all.bottomLeft(), all.bottomRight()})
    ring += QRect(p - QPoint(corner, corner), p + QPoint(corner, corner)) & all;
  for (const AnyShape* s : marks_of(drawing_, id)) {
    const QRectF mark = bounds(*s);
    ring += QRectF(on_view(mark.topLeft()), on_view(mark.bottomRight())).toAlignedRect();
  }
  return ring;
}

void Canvas::paint_way(QPainter& painter) {
  QPen pen(colour(colours(), Ink::ok), 5);
  pen.setCapStyle(Qt::FlatCap);
  painter.setPen(pen);
  for (const WayLine& l : way_lines_) painter.drawLine(l.from.x, l.from.y, l.to.x, l.to.y);
  for (const AnyId id : way_)
    if (id.kind != Kind::pc && id != way_end_) paint_ring(painter, id, Ink::ok, 2, true);
  if (way_end_ && way_end_.kind != Kind::pc) paint_ring(painter, way_end_, Ink::error, 3, false);
}

// With the card at which it ends: there the packet was.
void Canvas::take_way_lines() {
  std::vector<AnyId> all = way_;
  all.push_back(way_end_);
  way_lines_ = lines_of_way(session_.shown().index(), drawing_, all);
}

void Canvas::show_way(const std::vector<AnyId>& passed, AnyId end) {
  if (passed == way_ && end == way_end_) return;
  way_ = passed;
  way_end_ = end;
  take_way_lines();
  viewport()->update();
}

QRegion Canvas::band_of(AnyId segment) const {
  QRegion out;
  for (const QRectF& r : rings_of(segment))
    out += QRectF(on_view(r.topLeft()), on_view(r.bottomRight())).toAlignedRect().adjusted(-3, -3, 3, 3);
  return out;
}

void Canvas::update_around(AnyId id) { viewport()->update(around(id)); }

// Of a ring and the handles at the edge: what is inside a large element stays.
QRegion Canvas::around(AnyId id) const {
  if (id.kind == Kind::segment) return band_of(id);
  const snug::Box box = box_of(drawing_, id);
  if (box.w == 0) return {};
  const QRect on = on_view(box).toAlignedRect();
  const int out = std::max(kRingReach, qCeil(kRingReach * zoom_));
  const QRect inner = on.adjusted(out, out, -out, -out);
  const QRegion all(on.adjusted(-out, -out, out, out));
  return inner.width() > 0 && inner.height() > 0 ? all - inner : all;
}

} // namespace snug
