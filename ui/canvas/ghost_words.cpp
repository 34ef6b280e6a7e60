#include "ui/canvas/ghost_words.h"

#include "ui/diagram/paint.h"

#include <QStringList>
#include <QTextOption>

#include <algorithm>
#include <iterator>

namespace snug {

namespace {

constexpr qreal kWidth = 340; // longer lines are broken
constexpr std::size_t kKept = 64;
constexpr qreal kAside = 12, kTitleLine = 20, kFirst = 28, kBelow = 2, kBetween = 3;

} // namespace

GhostWords::Line GhostWords::laid_out(const QString& text, bool is_title) {
  const auto known = std::find_if(kept_.begin(), kept_.end(),
                                  [&](const Line& l) { return l.is_title == is_title && l.text == text; });
  if (known != kept_.end()) {
    Line line = std::move(*known);
    kept_.erase(known);
    return line;
  }
  Line line{text, is_title,
            std::make_unique<QTextLayout>(text, is_title ? diagram_font(13, Weight::semibold)
                                                         : diagram_font(12, Weight::regular))};
  QTextOption option;
  option.setWrapMode(is_title ? QTextOption::NoWrap : QTextOption::WordWrap);
  option.setTextDirection(direction_);
  option.setAlignment(direction_ == Qt::RightToLeft ? Qt::AlignRight : Qt::AlignLeft);
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
  std::move(lines_.begin(), lines_.end(), std::back_inserter(kept_));
  lines_.clear();
  if (direction != direction_) kept_.clear();
  says_ = says;
  direction_ = direction;
  lines_.push_back(laid_out(title, true));
  for (const QString& text : words.split(QLatin1Char('\n'), Qt::SkipEmptyParts))
    lines_.push_back(laid_out(text, false));
  if (kept_.size() > kKept) kept_.erase(kept_.begin(), kept_.end() - static_cast<std::ptrdiff_t>(kKept));
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
