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

namespace snug {

namespace {

constexpr int kLargest = 190, kInset = 10; // pixels

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
  connect(&canvas_, &Canvas::zoom_changed, this, &Minimap::place);
  for (QScrollBar* bar : {canvas_.horizontalScrollBar(), canvas_.verticalScrollBar()}) {
    connect(bar, &QScrollBar::rangeChanged, this, &Minimap::place);
    connect(bar, &QScrollBar::valueChanged, this, qOverload<>(&QWidget::update));
  }
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
  const QRect room = canvas_.viewport()->geometry();
  setGeometry(QRect(room.bottomRight() - QPoint(size.width() + kInset, size.height() + kInset), size));
  raise();
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
