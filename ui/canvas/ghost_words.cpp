#include "ui/canvas/ghost_words.h"

#include "ui/diagram/paint.h"

#include <QStringList>
#include <QTextOption>

#include <algorithm>

namespace snug {

namespace {

constexpr qreal kWidth = 340; // longer lines are broken
constexpr qreal kAside = 12, kTitleLine = 20, kFirst = 28, kBelow = 2, kBetween = 3;

} // namespace

GhostWords::Line GhostWords::laid_out(const QString& text, bool is_title) {
  for (Line& known : lines_)
    if (known.layout && known.is_title == is_title && known.text == text) return std::move(known);
  Line line{text, is_title,
            std::make_unique<QTextLayout>(text, is_title ? diagram_font(13, Weight::semibold)
                                                         : diagram_font(12, Weight::regular))};
  QTextOption option;
  option.setWrapMode(is_title ? QTextOption::NoWrap : QTextOption::WordWrap);
  option.setTextDirection(direction_);
  line.layout->setTextOption(option);
  line.layout->setCacheEnabled(true);
  line.layout->beginLayout();
  for (QTextLine row = line.layout->createLine(); row.isValid(); row = line.layout->createLine()) {
    row.setLineWidth(kWidth);
    row.setPosition({0, line.height});
    line.height += row.height();
    line.width = std::max(line.width, row.naturalTextWidth());
  }
  line.layout->endLayout();
  return line;
}

void GhostWords::take(const QString& title, const QString& words, Qt::LayoutDirection direction) {
  const QString says = title + QLatin1Char('\n') + words;
  if (says == says_ && direction == direction_) return;
  if (direction != direction_) lines_.clear();
  says_ = says;
  direction_ = direction;
  std::vector<Line> lines;
  lines.push_back(laid_out(title, true));
  for (const QString& text : words.split(QLatin1Char('\n'), Qt::SkipEmptyParts))
    lines.push_back(laid_out(text, false));
  lines_ = std::move(lines);
  qreal w = 0, h = kFirst + kBelow;
  for (const Line& line : lines_) {
    w = std::max(w, line.width);
    if (!line.is_title) h += line.height + kBetween;
  }
  size_ = QSizeF(std::min(w, kWidth) + 2 * kAside, h);
}

void GhostWords::paint(QPainter& painter, QPointF corner, const QColor& title, const QColor& words) const {
  const qreal room = size_.width() - 2 * kAside;
  const qreal x = corner.x() + kAside - (direction_ == Qt::RightToLeft ? kWidth - room : 0);
  qreal y = corner.y() + kFirst;
  for (const Line& line : lines_) {
    painter.setPen(line.is_title ? title : words);
    if (line.is_title) {
      line.layout->draw(&painter, {x, corner.y() + kTitleLine - line.layout->lineAt(0).ascent()});
      continue;
    }
    line.layout->draw(&painter, {x, y});
    y += line.height + kBetween;
  }
}

} // namespace snug
