#include "ui/canvas/canvas.h"
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
constexpr int kRingReach = 16;    // on either side of an edge, of rings, marks and handles

} // namespace

void Canvas::paintEvent(QPaintEvent* event) {
  const QRect dirty = event->rect();
  QPainter painter(viewport());
  painter.fillRect(dirty, colour(colours(), Ink::sheet)); // clipped to the region
  const bool small = zoom_ < kTextFrom;
  painter.setRenderHint(QPainter::Antialiasing, !small);
  painter.setRenderHint(QPainter::TextAntialiasing);
  painter.translate(on_view(QPointF(0, 0)));
  painter.scale(zoom_, zoom_);
  std::vector<QRectF> seen;
  for (const QRect& r : event->region())
    seen.emplace_back(on_drawing(r.topLeft()), on_drawing(r.bottomRight() + QPoint(1, 1)));
  const Drawing* moving = glide_.shown();
  for (const AnyShape& s : (moving ? *moving : drawing_).shapes) {
    if (small && std::holds_alternative<TextShape>(s)) continue;
    const QRectF touched = bounds(s);
    if (std::none_of(seen.begin(), seen.end(), [&](const QRectF& r) { return touched.intersects(r); }))
      continue;
    paint(painter, s, colours());
    ++painted_.shapes;
  }
  ++painted_.frames;
  if (QRegion(viewport()->rect()).subtracted(event->region()).isEmpty()) ++painted_.whole;
  if (!moving) paint_over(painter);
}

void Canvas::paint_ring(QPainter& painter, AnyId id, Ink ink, int width, bool dashed) {
  snug::Box box = box_of(drawing_, id);
  if (box.w == 0) return;
  QPen pen(colour(colours(), ink), width);
  if (dashed) pen.setDashPattern({3, 2});
  painter.setPen(pen);
  painter.setBrush(Qt::NoBrush);
  painter.drawRoundedRect(as_rect(box).adjusted(-4, -4, 4, 4), 10, 10);
  paint_marks(painter, id);
}

// What a ring must not cover: badge and tack, which stand on the edge of the card.
void Canvas::paint_marks(QPainter& painter, AnyId id) {
  for (const Group& g : drawing_.groups) {
    if (g.of != id) continue;
    for (std::uint32_t i = g.first; i < g.end; ++i) {
      const snug::Shape& s = shape_of(drawing_.shapes[i]);
      if (s.of == id && (s.part == Part::badge || s.part == Part::held))
        paint(painter, drawing_.shapes[i], colours());
    }
    return;
  }
}

void Canvas::paint_over(QPainter& painter) {
  painter.setRenderHint(QPainter::Antialiasing);
  if (hover_ && !gesture_ && !session_.is_selected(hover_)) paint_ring(painter, hover_, Ink::muted, 1, false);
  paint_way(painter);
  for (const AnyId id : session_.selection()) paint_ring(painter, id, Ink::info, 2, false);
  if (focus_ && hasFocus() && !gesture_ && !session_.is_selected(focus_))
    paint_ring(painter, focus_, Ink::text, 2, true);
  if (!gesture_) return paint_handles(painter);
  if (gesture_->target() && !gesture_->duty())
    paint_ring(painter, gesture_->target(), gesture_->is_refused() ? Ink::error : Ink::info, 3, true);
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
  if (!gesture_->shows_duties()) return;
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
  if (!gesture_ || gesture_->title().isEmpty()) return {};
  return off_target(QRectF(pointer_ + QPointF(kGhostGap, kGhostGap), ghost_size()));
}

// Words are measured once: they are asked for several times a frame.
QSizeF Canvas::ghost_size() const {
  const QString says = gesture_->title() + QLatin1Char('\n') + gesture_->words();
  if (says == ghost_says_) return ghost_size_;
  const QFontMetricsF bold(diagram_font(13, Weight::semibold)), plain(diagram_font(12, Weight::regular));
  qreal w = bold.horizontalAdvance(gesture_->title());
  qreal h = 30;
  for (const QString& line : gesture_->words().split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
    w = std::max(w, plain.horizontalAdvance(line));
    h += plain.boundingRect(QRectF(0, 0, kGhostWidth, 400), Qt::TextWordWrap, line).height() + 3;
  }
  ghost_says_ = says;
  return ghost_size_ = QSizeF(std::min(w, kGhostWidth) + 24, h);
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
  const QRectF box = ghost_box();
  if (box.isNull()) return;
  const Ink ink = gesture_->is_refused() ? Ink::error : Ink::info;
  painter.setPen(QPen(colour(colours(), ink), 1.5, Qt::DashLine));
  painter.setBrush(colour(colours(), Ink::card));
  painter.drawRoundedRect(box, 8, 8);
  painter.setFont(diagram_font(13, Weight::semibold));
  painter.setPen(colour(colours(), ink));
  painter.drawText(QPointF(box.x() + 12, box.y() + 20), gesture_->title());
  painter.setFont(diagram_font(12, Weight::regular));
  painter.setPen(colour(colours(), gesture_->is_refused() ? Ink::error : Ink::text));
  qreal y = box.y() + 28;
  for (const QString& line : gesture_->words().split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
    QRectF used;
    painter.drawText(QRectF(box.x() + 12, y, kGhostWidth, 400), Qt::TextWordWrap, line, &used);
    y += used.height() + 3;
  }
}

// Only what a moved pointer changes: the words beside it, its line or band.
void Canvas::update_over() {
  QRectF now = ghost_box();
  if (gesture_) {
    for (const auto& from : {gesture_->line_from(), gesture_->band_from()})
      if (from) now = now.united(QRectF(on_view(*from), pointer_).normalized());
    if (gesture_->target() != ringed_) take_ring(gesture_->target());
  } else {
    take_ring({});
  }
  for (const QRectF& r : {over_, now}) viewport()->update(r.toAlignedRect().adjusted(-4, -4, 4, 4));
  over_ = now;
}

// The element may have another size now than when its ring was painted, or the view another zoom.
void Canvas::take_ring(AnyId id) {
  viewport()->update(ring_ + around(ringed_));
  ringed_ = id;
  ring_ = around(id);
  viewport()->update(ring_);
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

void Canvas::update_around(AnyId id) { viewport()->update(around(id)); }

// Of a ring and the handles at the edge: what is inside a large element stays.
QRegion Canvas::around(AnyId id) const {
  const snug::Box box = box_of(drawing_, id);
  if (box.w == 0) return {};
  const QRect on = on_view(box).toAlignedRect();
  const int out = std::max(kRingReach, qCeil(kRingReach * zoom_));
  const QRect inner = on.adjusted(out, out, -out, -out);
  const QRegion all(on.adjusted(-out, -out, out, out));
  return inner.width() > 0 && inner.height() > 0 ? all - inner : all;
}

} // namespace snug
