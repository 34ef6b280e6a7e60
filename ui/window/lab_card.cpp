#include "ui/window/lab_card.h"

#include "core/analyse/analyse.h"
#include "core/base/size.h"
#include "core/text/window_text.h"
#include "ui/diagram/paint.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QTextLayout>

namespace snug {

namespace {

constexpr int kHeight = 166, kMargin = 12; // of the small picture

QFont title_font() { return diagram_font(13, Weight::semibold); }

} // namespace

LabCard::LabCard(const Lab& lab, const QString& title, QWidget* parent)
    : QPushButton(parent), title_(title),
      about_(words(text::start_about, Count{static_cast<std::int64_t>(lab.machines.size())},
                   std::to_string(lab.segments.size()), size_words(lab.pc.installed).toStdString())) {
  DrawOptions options;
  options.show_ruler = options.show_legend = false;
  drawing_ = draw(analyse(lab), options);
  setProperty("role", QStringLiteral("sample"));
  setAccessibleName(title_);
  setAccessibleDescription(about_);
  setToolTip(title_);
}

QStringList LabCard::title_lines() const {
  const qreal width = this->width() - 2 * kMargin;
  QTextLayout layout(title_, title_font());
  QTextOption option;
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  layout.setTextOption(option);
  layout.beginLayout();
  QTextLine first = layout.createLine();
  if (first.isValid()) first.setLineWidth(width);
  layout.endLayout();
  if (!first.isValid()) return {};
  QStringList lines{title_.left(first.textLength()).trimmed()};
  const QString rest = title_.mid(first.textLength()).trimmed();
  if (!rest.isEmpty()) lines << QFontMetricsF(title_font()).elidedText(rest, Qt::ElideRight, width);
  return lines;
}

void LabCard::paintEvent(QPaintEvent* event) {
  QPushButton::paintEvent(event);
  QPainter painter(this);
  const Palette& colours = snug::palette(theme_of(palette()));
  const QRectF room(10, 10, width() - 20, kHeight - 10);
  if (drawing_.width > 0) {
    const qreal scale = std::min(room.width() / drawing_.width, room.height() / drawing_.height);
    painter.save();
    painter.translate(room.center() - QPointF(drawing_.width, drawing_.height) * scale / 2);
    painter.scale(scale, scale);
    paint(painter, drawing_, colours);
    painter.restore();
  }
  painter.setFont(title_font());
  painter.setPen(colour(colours, Ink::text));
  QRect line(kMargin, kHeight + 6, width() - 2 * kMargin, qCeil(QFontMetricsF(title_font()).height()));
  for (const QString& words_of : title_lines()) {
    painter.drawText(line, Qt::AlignLeading | Qt::AlignVCenter | Qt::TextSingleLine, words_of);
    line.translate(0, line.height());
  }
  painter.setFont(diagram_font(12, Weight::regular));
  painter.setPen(colour(colours, Ink::muted));
  painter.drawText(line, Qt::AlignLeading | Qt::AlignVCenter | Qt::TextSingleLine, about_);
}

} // namespace snug
