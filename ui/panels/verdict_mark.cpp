#include "ui/panels/verdict_mark.h"

#include "ui/theme/theme.h"

#include <QPainter>
#include <QPainterPath>

namespace snug {

namespace {

constexpr int kSize = 20;

Ink ink_of(Mark mark) {
  switch (mark) {
  case Mark::yes:
    return Ink::ok;
  case Mark::no:
    return Ink::error;
  case Mark::none:
    return Ink::muted;
  default:
    return Ink::caution;
  }
}

// On a field of 20 by 20: tick, cross, an arrow without return, two ways, a dash.
QPainterPath sign_of(Mark mark) {
  QPainterPath p;
  const auto line = [&p](std::initializer_list<QPointF> points) {
    p.moveTo(*points.begin());
    for (const QPointF& at : points) p.lineTo(at);
  };
  switch (mark) {
  case Mark::yes:
    line({{5.5, 10.5}, {8.8, 13.6}, {14.5, 6.8}});
    break;
  case Mark::no:
    line({{6.5, 6.5}, {13.5, 13.5}});
    line({{13.5, 6.5}, {6.5, 13.5}});
    break;
  case Mark::one_way:
    line({{5, 10}, {15, 10}});
    line({{11.2, 6.4}, {15, 10}, {11.2, 13.6}});
    break;
  case Mark::chance:
    line({{5.5, 13.5}, {10, 10}, {14.5, 6.5}});
    line({{10, 10}, {14.5, 13.5}});
    break;
  case Mark::none:
    line({{6, 10}, {14, 10}});
    break;
  }
  return p;
}

} // namespace

VerdictMark::VerdictMark(Mark mark, const QString& word, const Palette& palette, QWidget* parent)
    : QWidget(parent), mark_(mark), palette_(palette) {
  setFixedSize(kSize, kSize);
  setAccessibleName(word);
  setToolTip(word);
}

// Round for what is fine, square for what is not: the shape tells it too.
void VerdictMark::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QColor ink = colour(palette_, ink_of(mark_));
  const QRectF field(1, 1, kSize - 2, kSize - 2);
  const bool hollow = mark_ == Mark::none;
  painter.setPen(hollow ? QPen(ink, 1.5) : QPen(Qt::NoPen));
  painter.setBrush(hollow ? QBrush(Qt::NoBrush) : QBrush(ink));
  const bool round = mark_ == Mark::yes || hollow;
  painter.drawRoundedRect(field, round ? 9 : 4, round ? 9 : 4);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(
      QPen(hollow ? ink : colour(palette_, Ink::inside), 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.drawPath(sign_of(mark_));
}

} // namespace snug
