#include "ui/canvas/canvas.h"

#include "ui/canvas/canvas_access.h"
#include "ui/session/tongue.h"

#include <QApplication>
#include <QLineF>
#include <QScrollBar>
#include <QStyleHints>

#include <algorithm>
#include <array>
#include <cmath>

namespace snug {

namespace {

constexpr qreal kLeastZoom = 0.05, kMostZoom = 4, kComfortable = 0.8;
constexpr int kStep = 40; // of the scroll bars

} // namespace

Canvas::Canvas(Session& session, QWidget* parent)
    : QAbstractScrollArea(parent), session_(session), glide_(*viewport()) {
  setObjectName(QStringLiteral("canvas"));
  CanvasAccess::install();
  setFocusPolicy(Qt::StrongFocus);
  viewport()->setMouseTracking(true);
  setAcceptDrops(true);
  viewport()->setAttribute(Qt::WA_OpaquePaintEvent);
  connect(&session_, &Session::lab_changed, this, [this] { redrawing_.forget(); });
  connect(&session_, &Session::shown_changed, this, &Canvas::redraw);
  connect(&session_, &Session::selection_changed, this, [this] {
    viewport()->update();
    CanvasAccess::tell(*this);
  });
  connect(&session_, &Session::started, this, [this] {
    cancel();
    focus_ = hover_ = {};
    fit_ = Fit::readable;
    zoom_ = kComfortable;
  });
  redraw();
}

Canvas::~Canvas() = default;

void Canvas::set_theme(Theme theme) {
  theme_ = theme;
  kept_.forget();
  viewport()->update();
}

void Canvas::glide_from(Drawing before) { glide_.start(std::move(before), drawing_); }

void Canvas::redraw() {
  glide_.stop();
  if (!gesture_) kept_.forget(); // the next one may begin before anything is painted
  DrawOptions options;
  culled_ = session_.is_previewing() && gesture_;
  if (culled_) { // a frame of a drag: what is not seen is drawn after it
    options.only = seen();
    options.describe = false;
  }
  options.exercise = session_.exercise();
  options.full_addresses = false;
  options.tongue = &spoken();
  options.show_ruler = options.show_state = false; // the ruler over the canvas says it
  options.show_legend = false;
  options.show_held = options.offer_power = options.show_bands = options.invite = true;
  Drawing next = culled_ ? draw_preview(options) : draw(session_.shown(), options);
  std::vector<QRectF> changed = differences(drawing_, next, as_rect(seen()));
  const std::vector<QRectF> before = ringed();
  drawing_ = std::move(next);
  const std::vector<QRectF> after = ringed();
  for (std::size_t i = 0; i < after.size(); ++i)
    if (before[i] != after[i]) changed.insert(changed.end(), {before[i], after[i]});
  if (!way_.empty()) {
    take_way_lines();
    viewport()->update(); // its lines may be anywhere
  }
  if (!gesture_ && sheet_ != QSize(drawing_.width, drawing_.height)) return take_size();
  const QRegion other = damage(changed);
  kept_.spoil(other);
  viewport()->update(other);
}

// Two previews in a row differ in what either of them changes.
Drawing Canvas::draw_preview(const DrawOptions& options) {
  std::vector<AnyId> now = session_.previewed(), both = now;
  both.insert(both.end(), previewed_.begin(), previewed_.end());
  previewed_ = std::move(now);
  return redrawing_.draw(session_.shown(), options, both);
}

snug::Box Canvas::seen() const {
  const QRectF view(viewport()->rect());
  const QRect r = QRectF(on_drawing(view.topLeft()), on_drawing(view.bottomRight())).toAlignedRect();
  return {r.x(), r.y(), r.width(), r.height()};
}

std::vector<AnyId> Canvas::outlined() const { return gesture_ ? gesture_->in_hand() : session_.selection(); }

// Where rings stand around elements, which a drawing does not hold.
std::vector<QRectF> Canvas::ringed() const {
  constexpr qreal kReach = 7; // of a ring over the edge, in the drawing's units
  std::vector<AnyId> ids = outlined();
  ids.insert(ids.end(), way_.begin(), way_.end());
  ids.insert(ids.end(), {way_end_, focus_});
  std::vector<QRectF> out;
  for (const AnyId id : ids) out.push_back(ringed_box(id).adjusted(-kReach, -kReach, kReach, kReach));
  return out;
}

// What has changed in each tile of the view: many small rectangles cost more than what they save, one around
// all would often be the whole view.
QRegion Canvas::damage(const std::vector<QRectF>& changed) const {
  constexpr int kAcross = 6, kDown = 6;
  const QRect view = viewport()->rect();
  std::array<QRect, std::size_t{kAcross} * kDown> tiles;
  const int w = view.width() / kAcross + 1, h = view.height() / kDown + 1;
  for (const QRectF& r : changed) {
    const QRect on =
        QRectF(on_view(r.topLeft()), on_view(r.bottomRight())).toAlignedRect().adjusted(-2, -2, 2, 2) & view;
    if (on.isEmpty()) continue;
    for (int y = on.top() / h; y <= on.bottom() / h; ++y)
      for (int x = on.left() / w; x <= on.right() / w; ++x)
        tiles[static_cast<std::size_t>(y) * kAcross + static_cast<std::size_t>(x)] |=
            on & QRect(x * w, y * h, w, h);
  }
  QRegion region;
  for (const QRect& tile : tiles) region += tile;
  return region;
}

// After a drag, and where it scrolls: draws what was left out.
void Canvas::draw_again() {
  if (culled_) redraw();
}

// During a gesture nothing moves under the hand: the sheet keeps its size until the drop.
void Canvas::take_size() {
  if (sheet_ == QSize(drawing_.width, drawing_.height)) return;
  sheet_ = {drawing_.width, drawing_.height};
  update_bars();
  fit_again();
  viewport()->update();
}

QPointF Canvas::on_drawing(QPointF view) const {
  const QPointF origin = on_view(QPointF(0, 0));
  return (view - origin) / zoom_;
}

QPointF Canvas::on_view(QPointF p) const {
  const qreal w = sheet_.width() * zoom_, h = sheet_.height() * zoom_;
  const qreal left =
      w < viewport()->width() ? (viewport()->width() - w) / 2 : -horizontalScrollBar()->value();
  const qreal top = h < viewport()->height() ? (viewport()->height() - h) / 2 : -verticalScrollBar()->value();
  return {left + p.x() * zoom_, top + p.y() * zoom_};
}

QRectF Canvas::on_view(const snug::Box& b) const {
  return {on_view(QPointF(b.x, b.y)), on_view(QPointF(b.right(), b.bottom()))};
}

void Canvas::update_bars() {
  const int w = static_cast<int>(std::floor(sheet_.width() * zoom_));
  const int h = static_cast<int>(std::floor(sheet_.height() * zoom_));
  horizontalScrollBar()->setPageStep(viewport()->width());
  verticalScrollBar()->setPageStep(viewport()->height());
  horizontalScrollBar()->setRange(0, std::max(0, w - viewport()->width()));
  verticalScrollBar()->setRange(0, std::max(0, h - viewport()->height()));
  horizontalScrollBar()->setSingleStep(kStep);
  verticalScrollBar()->setSingleStep(kStep);
}

void Canvas::set_zoom(qreal zoom, QPointF anchor) {
  kept_.forget();
  if (held_.view != anchor || QLineF(on_view(held_.drawing), anchor).length() >= 1)
    held_ = {anchor, on_drawing(anchor)};
  const QPointF fixed = held_.drawing;
  zoom_ = std::clamp(zoom, kLeastZoom, kMostZoom);
  fit_ = Fit::none;
  update_bars();
  const QPointF now = on_view(fixed);
  horizontalScrollBar()->setValue(horizontalScrollBar()->value() + qRound(now.x() - anchor.x()));
  verticalScrollBar()->setValue(verticalScrollBar()->value() + qRound(now.y() - anchor.y()));
  draw_again();
  viewport()->update();
  emit zoom_changed();
}

void Canvas::zoom_by(qreal factor) { set_zoom(zoom_ * factor, QRectF(viewport()->rect()).center()); }

void Canvas::show_all() {
  if (drawing_.width <= 0 || drawing_.height <= 0) return;
  constexpr qreal kLargest = 1.5; // letters of a small lab do not become posters
  const qreal fit =
      std::min(viewport()->width() / qreal(drawing_.width), viewport()->height() / qreal(drawing_.height));
  zoom_ = std::clamp(fit, kLeastZoom, kLargest);
  fit_ = Fit::all;
  update_bars();
  viewport()->update();
  emit zoom_changed();
}

void Canvas::show_readable() {
  constexpr qreal kReadable = 0.55;
  const qreal was = zoom_;
  show_all();
  if (zoom_ < kReadable) set_zoom(std::clamp(was, kReadable, kComfortable), QPointF(0, 0));
  fit_ = Fit::readable;
}

void Canvas::fit_again() {
  if (fit_ == Fit::all) return show_all();
  const bool scrolled = horizontalScrollBar()->value() != 0 || verticalScrollBar()->value() != 0;
  if (fit_ == Fit::readable && !scrolled) show_readable();
}

void Canvas::show_place(AnyId id) {
  const snug::Box box = box_of(drawing_, id);
  if (box.w == 0) return;
  focus_ = id;
  const QRectF on = on_view(box);
  const QRectF room = QRectF(viewport()->rect()).adjusted(20, 20, -20, -20);
  if (!room.contains(on)) {
    const QPointF by = on.center() - room.center();
    horizontalScrollBar()->setValue(horizontalScrollBar()->value() + qRound(by.x()));
    verticalScrollBar()->setValue(verticalScrollBar()->value() + qRound(by.y()));
  }
  viewport()->update();
}

void Canvas::resizeEvent(QResizeEvent*) {
  kept_.forget();
  update_bars();
  fit_again();
  draw_again();
}

void Canvas::scrollContentsBy(int dx, int dy) {
  kept_.forget();
  viewport()->scroll(dx, dy);
  if (gesture_) viewport()->update(); // what stands beside the pointer does not scroll
  draw_again();
}

Canvas::Painted Canvas::take_painted() { return std::exchange(painted_, {}); }

} // namespace snug
