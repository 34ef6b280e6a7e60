#include "ui/panels/severity_mark.h"

#include "core/layout/draw_parts.h"
#include "core/text/window_text.h"
#include "ui/diagram/paint.h"
#include "ui/session/words.h"

#include <QPainter>

namespace snug {

namespace {
constexpr int kSize = 20;
}

QIcon severity_icon(Severity severity, const Palette& palette) {
  constexpr int kDensity = 2;
  QPixmap picture(kSize * kDensity, kSize * kDensity);
  picture.fill(Qt::transparent);
  picture.setDevicePixelRatio(kDensity);
  Drawing drawing;
  layout::Pen(drawing).badge({kSize / 2, kSize / 2}, layout::ink_of(severity));
  QPainter painter(&picture);
  paint(painter, drawing, palette);
  return picture;
}

SeverityMark::SeverityMark(Severity severity, const Palette& palette, QWidget* parent)
    : QWidget(parent), severity_(severity), palette_(palette) {
  setFixedSize(kSize, kSize);
  const QString word = words(severity == Severity::error     ? text::severity_error
                             : severity == Severity::caution ? text::severity_caution
                                                             : text::severity_note);
  setAccessibleName(word);
  setToolTip(word);
}

void SeverityMark::paintEvent(QPaintEvent*) {
  Drawing drawing;
  layout::Pen(drawing).badge({kSize / 2, kSize / 2}, layout::ink_of(severity_));
  QPainter painter(this);
  paint(painter, drawing, palette_);
}

} // namespace snug
