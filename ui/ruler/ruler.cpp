#include "ui/ruler/ruler.h"

#include "core/budget/expected.h"
#include "core/budget/memory.h"
#include "core/gesture/move.h"
#include "core/text/layout_text.h"
#include "ui/canvas/shapes.h"
#include "ui/diagram/paint.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QHelpEvent>
#include <QMouseEvent>
#include <QPaintEvent>
#include <QPainter>
#include <QToolTip>

#include <cstdlib>

namespace snug {

namespace {
constexpr int kGrip = 4; // pixels beside an edge
}

Ruler::Ruler(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("ruler"));
  setMouseTracking(true);
  setFocusPolicy(Qt::TabFocus);
  connect(&session_, &Session::shown_changed, this, &Ruler::redraw);
  connect(&session_, &Session::selection_changed, this, [this] {
    marked_ = marks();
    update();
  });
  redraw();
}

void Ruler::set_theme(Theme theme) {
  theme_ = theme;
  update();
}

void Ruler::redraw() {
  if (beside_ && *beside_ && !exists(session_.shown().lab(), *beside_)) beside_.reset();
  if (glance_ && *glance_ && !exists(session_.shown().lab(), *glance_)) glance_.reset();
  Drawing next =
      draw_ruler(session_.shown(), session_.exercise(), width(), glance_ ? glance_ : beside_, &spoken());
  QRegion changed = next.width == drawing_.width ? QRegion() : QRegion(rect());
  for (const QRectF& r : differences(drawing_, next, QRectF(rect())))
    changed += r.toAlignedRect().adjusted(-1, -1, 1, 1);
  if (next.height != drawing_.height) setFixedHeight(next.height);
  drawing_ = std::move(next);
  std::vector<QRect> now = marks();
  if (now != marked_) {
    for (const std::vector<QRect>* all : {&marked_, &now})
      for (const QRect& r : *all) changed += r.adjusted(-2, -2, 2, 2);
    marked_ = std::move(now);
  }
  const QString says = as_qt(drawing_.title + ": " + drawing_.description);
  if (says != accessibleName()) setAccessibleName(says);
  update(changed);
}

void Ruler::compare_with(std::optional<ExerciseId> other) {
  if (other == beside_) return;
  beside_ = other;
  redraw();
}

void Ruler::glance_at(std::optional<ExerciseId> other) {
  if (other == glance_) return;
  glance_ = other;
  redraw();
}

void Ruler::resizeEvent(QResizeEvent*) { redraw(); }

QRect Ruler::block(MachineId m) const {
  for (const AnyShape& s : drawing_.shapes)
    if (const auto* box = std::get_if<BoxShape>(&s); box && m && box->of == AnyId(m))
      return as_rect(box->box).toRect();
  return {};
}

std::vector<QRect> Ruler::marks() const {
  std::vector<QRect> out;
  for (const AnyId id : session_.marked())
    if (const QRect r = id.kind == Kind::machine ? block({id.number}) : QRect(); !r.isEmpty())
      out.push_back(r);
  return out;
}

MachineId Ruler::at(QPoint p) const {
  for (const AnyShape& s : drawing_.shapes)
    if (const auto* box = std::get_if<BoxShape>(&s);
        box && box->of.kind == Kind::machine && as_rect(box->box).contains(p))
      return {box->of.number};
  return {};
}

MachineId Ruler::edge_at(QPoint p) const {
  for (const AnyShape& s : drawing_.shapes)
    if (const auto* box = std::get_if<BoxShape>(&s); box && box->of.kind == Kind::machine &&
                                                     std::abs(box->box.right() - p.x()) <= kGrip &&
                                                     p.y() >= box->box.y && p.y() <= box->box.bottom())
      return {box->of.number};
  return {};
}

void Ruler::paintEvent(QPaintEvent* event) {
  QPainter painter(this);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  for (const AnyShape& s : drawing_.shapes)
    if (event->region().intersects(bounds(s).toAlignedRect())) paint(painter, s, snug::palette(theme_));
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colour(snug::palette(theme_), Ink::info), 2));
  for (const QRect& r : marks()) painter.drawRect(r.adjusted(0, 0, -1, -1));
  if (!hasFocus()) return;
  painter.setPen(QPen(colour(snug::palette(theme_), Ink::info), 2));
  painter.drawRoundedRect(rect().adjusted(1, 1, -1, -1), 4, 4);
}

Edit Ruler::edit_at(int x) const {
  return set_memory(session_.lab(), dragged_, memory_ + (x - pressed_x_) * scale_);
}

void Ruler::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  dragged_ = edge_at(event->pos());
  if (!dragged_) {
    const MachineId m = at(event->pos());
    session_.select(m ? std::vector<AnyId>{m} : std::vector<AnyId>{});
    return;
  }
  pressed_x_ = event->pos().x();
  memory_ = snug::find<Machine>(session_.lab(), dragged_)->memory;
  scale_ = mib_per_pixel(session_.analysis(), session_.exercise(), width());
  session_.select({AnyId(dragged_)});
}

void Ruler::mouseMoveEvent(QMouseEvent* event) {
  if (!dragged_) {
    setCursor(edge_at(event->pos()) ? Qt::SizeHorCursor : Qt::ArrowCursor);
    return;
  }
  const Edit edit = edit_at(event->pos().x());
  if (edit.empty())
    session_.end_preview();
  else
    session_.preview(edit);
}

void Ruler::mouseReleaseEvent(QMouseEvent* event) {
  if (!dragged_) return;
  Edit edit = edit_at(event->pos().x());
  dragged_ = {};
  session_.end_preview();
  session_.seal();
  if (!edit.empty()) session_.perform(std::move(edit));
}

void Ruler::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && dragged_) {
    dragged_ = {};
    return session_.end_preview();
  }
  const int step = event->key() == Qt::Key_Plus || event->key() == Qt::Key_Right   ? 1
                   : event->key() == Qt::Key_Minus || event->key() == Qt::Key_Left ? -1
                                                                                   : 0;
  if (step == 0 || session_.selection().size() != 1 || session_.selection().front().kind != Kind::machine)
    return QWidget::keyPressEvent(event);
  const MachineId m{session_.selection().front().number};
  session_.perform(
      set_memory(session_.lab(), m, snug::find<Machine>(session_.lab(), m)->memory + step * kMemoryStep),
      true);
}

QString Ruler::block_words(MachineId m) const {
  const Analysis& a = session_.shown();
  const std::uint32_t place = a.index().place(m);
  const std::int64_t takes = snug::takes(a.index(), place);
  const std::int64_t expected = expected_of(a.index(), a.budgets(session_.exercise()), place);
  return whole_words(say(expected < takes ? text::ruler_block_expected : text::ruler_block,
                         name_of(a.lab(), m), Mib{a.lab().machines[place].memory}, Mib{takes},
                         Mib{expected}));
}

bool Ruler::event(QEvent* event) {
  if (event->type() == QEvent::ToolTip) {
    const auto* help = static_cast<QHelpEvent*>(event);
    const MachineId m = at(help->pos());
    QToolTip::showText(help->globalPos(), m ? block_words(m) : accessibleName(), this);
    return true;
  }
  return QWidget::event(event);
}

} // namespace snug
