#include "ui/canvas/minimap.h"

#include "core/text/window_text.h"
#include "ui/diagram/paint.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>
#include <optional>

namespace snug {

namespace {

constexpr int kLargest = 190, kInset = 10; // pixels
constexpr int kAwake = 1500;               // milliseconds
constexpr qreal kFaint = 0.3;              // opacity
constexpr int kCorners = 4;

// Lower right, lower left, upper right, upper left.
QRect in_corner(const QRect& room, QSize size, int corner) {
  const bool left = corner % 2 == 1, upper = corner >= 2;
  const int x = left ? room.left() + kInset : room.right() - size.width() - kInset;
  const int y = upper ? room.top() + kInset : room.bottom() - size.height() - kInset;
  return {QPoint(x, y), size};
}

} // namespace

Minimap::Minimap(Canvas& canvas) : QWidget(&canvas), canvas_(canvas) {
  setObjectName(QStringLiteral("minimap"));
  setAccessibleName(words(text::minimap_name));
  setToolTip(words(text::minimap_name));
  setCursor(Qt::PointingHandCursor);
  canvas_.installEventFilter(this);
  connect(&canvas_.session(), &Session::lab_changed, this, &Minimap::stale);
  connect(&canvas_.session(), &Session::exercise_changed, this, &Minimap::stale);
  connect(&canvas_.session(), &Session::started, this, &Minimap::stale);
  connect(&canvas_, &Canvas::zoom_changed, this, [this] {
    place();
    moved();
  });
  for (QScrollBar* bar : {canvas_.horizontalScrollBar(), canvas_.verticalScrollBar()}) {
    connect(bar, &QScrollBar::rangeChanged, this, &Minimap::place);
    connect(bar, &QScrollBar::valueChanged, this, &Minimap::moved);
  }
  awake_.setSingleShot(true);
  awake_.setInterval(kAwake);
  connect(&awake_, &QTimer::timeout, this, [this] {
    if (underMouse()) return awake_.start();
    settle();
  });
  place();
}

bool Minimap::eventFilter(QObject* of, QEvent* event) {
  if (event->type() == QEvent::Resize) place();
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::StyleChange) stale();
  return QWidget::eventFilter(of, event);
}

void Minimap::stale() {
  picture_ = {};
  place();
  update();
}

qreal Minimap::scale() const {
  const Drawing& d = canvas_.drawing();
  return static_cast<qreal>(kLargest) / std::max({d.width, d.height, 1});
}

void Minimap::place() {
  const bool wanted =
      canvas_.horizontalScrollBar()->maximum() > 0 || canvas_.verticalScrollBar()->maximum() > 0;
  setVisible(wanted);
  if (!wanted) return;
  const Drawing& d = canvas_.drawing();
  const QSize size(std::max(40, qRound(d.width * scale())), std::max(30, qRound(d.height * scale())));
  resize(size);
  settle();
  raise();
  update();
}

void Minimap::moved() {
  if (isHidden()) return;
  set_faint(false);
  awake_.start();
  update();
}

// Of the corners without machines where it covers the fewest words; of equals where it was.
void Minimap::settle() {
  const QRect room = canvas_.viewport()->geometry();
  std::optional<std::ptrdiff_t> fewest;
  const int before = corner_;
  for (int i = 0; i < kCorners; ++i) {
    const int corner = (before + i) % kCorners;
    const QRect there = in_corner(room, size(), corner);
    if (covers_machines(there)) continue;
    const std::ptrdiff_t covered = words_below(there);
    if (fewest && covered >= *fewest) continue;
    fewest = covered;
    corner_ = corner;
  }
  setGeometry(in_corner(room, size(), corner_));
  set_faint(!fewest && !awake_.isActive());
}

std::ptrdiff_t Minimap::words_below(const QRect& of_canvas) const {
  const QRectF there = of_canvas.translated(-canvas_.viewport()->pos());
  const QRectF on(canvas_.on_drawing(there.topLeft()), canvas_.on_drawing(there.bottomRight()));
  const auto& shapes = canvas_.drawing().shapes;
  return std::count_if(shapes.begin(), shapes.end(), [&](const AnyShape& s) {
    return std::holds_alternative<TextShape>(s) && bounds(s).intersects(on);
  });
}

bool Minimap::covers_machines(const QRect& of_canvas) const {
  const QRectF there = of_canvas.translated(-canvas_.viewport()->pos());
  const auto& groups = canvas_.drawing().groups;
  return std::any_of(groups.begin(), groups.end(), [&](const Group& g) {
    return g.part == Part::machine && canvas_.on_view(g.box).intersects(there);
  });
}

void Minimap::set_faint(bool faint) {
  if (faint == faint_) return;
  faint_ = faint;
  setAttribute(Qt::WA_TransparentForMouseEvents, faint);
  update();
}

QRectF Minimap::frame() const {
  const QRectF view(canvas_.viewport()->rect());
  const QRectF seen(canvas_.on_drawing(view.topLeft()), canvas_.on_drawing(view.bottomRight()));
  return QRectF(seen.topLeft() * scale(), seen.size() * scale()).intersected(QRectF(rect()));
}

// Letters would be dust: they are left out.
void Minimap::paintEvent(QPaintEvent*) {
  const Palette& colours = canvas_.colours();
  if (picture_.size() != size() * devicePixelRatio()) {
    picture_ = QPixmap(size() * devicePixelRatio());
    picture_.setDevicePixelRatio(devicePixelRatio());
    picture_.fill(colour(colours, Ink::sheet));
    QPainter painter(&picture_);
    painter.scale(scale(), scale());
    for (const AnyShape& s : canvas_.drawing().shapes)
      if (!std::holds_alternative<TextShape>(s)) paint(painter, s, colours);
  }
  QPainter painter(this);
  if (faint_) painter.setOpacity(kFaint);
  painter.drawPixmap(0, 0, picture_);
  painter.setPen(colour(colours, Ink::frame));
  painter.drawRect(rect().adjusted(0, 0, -1, -1));
  painter.setPen(QPen(colour(colours, Ink::info), 2));
  painter.drawRect(frame().adjusted(1, 1, -1, -1));
}

void Minimap::go_to(QPointF on_map) {
  const QPointF middle(canvas_.viewport()->width() / 2.0, canvas_.viewport()->height() / 2.0);
  const QPointF by = canvas_.on_view(on_map / scale()) - middle;
  for (const auto& [bar, d] :
       {std::pair{canvas_.horizontalScrollBar(), by.x()}, {canvas_.verticalScrollBar(), by.y()}})
    bar->setValue(bar->value() + qRound(d));
}

void Minimap::mousePressEvent(QMouseEvent* event) { go_to(event->position()); }
void Minimap::mouseMoveEvent(QMouseEvent* event) {
  if ((event->buttons() & Qt::LeftButton) != 0) go_to(event->position());
}

} // namespace snug
