#include "ui/diagram/paint.h"

#include <QPainterPath>
#include <QStringList>
#include <QTextLayout>
#include <QTextOption>

#include <algorithm>
#include <map>
#include <optional>
#include <unordered_map>

namespace snug {

namespace {

QColor colour(const Palette& palette, Ink ink) { return QColor::fromRgb(0xff000000U | palette.of(ink)); }

QPen pen(const Palette& palette, Ink ink, int width, Dash dash) {
  if (ink == Ink::none || width == 0) return Qt::NoPen;
  QPen p(colour(palette, ink), width / 10.0, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
  const DashPattern pattern = dash_pattern(dash);
  if (pattern.count == 0) return p;
  QList<qreal> lengths; // in units of the pen's width
  for (int i = 0; i < pattern.count; ++i)
    lengths.append(qreal(pattern.lengths[static_cast<std::size_t>(i)]) / width);
  p.setDashPattern(lengths);
  return p;
}

QBrush brush(const Palette& palette, Ink ink) {
  return ink == Ink::none ? QBrush(Qt::NoBrush) : QBrush(colour(palette, ink));
}

// Looking for a font and shaping a text again is most of painting it.
const QFont& kept_font(int size, Weight weight) {
  static std::map<std::pair<int, Weight>, QFont> fonts;
  const auto found = fonts.find({size, weight});
  return found != fonts.end()
             ? found->second
             : fonts.emplace(std::pair(size, weight), diagram_font(size, weight)).first->second;
}

// How wide texts are, by what is known of them; below 0: not measured yet.
qreal& advance_of(const TextShape& s) {
  constexpr std::size_t kMost = 20'000;
  static std::map<std::pair<int, Weight>, std::unordered_map<std::string, qreal>> advances;
  auto& known = advances[{s.size, s.weight}];
  if (known.size() >= kMost) known.clear();
  return known.try_emplace(s.text, -1).first->second;
}

// One line, laid out once to be measured and drawn.
class Laid {
 public:
  Laid(const QString& text, const QFont& font) : layout_(text, font) {
    QTextOption option;
    option.setWrapMode(QTextOption::NoWrap);
    option.setTextDirection(Qt::LeftToRight);
    layout_.setTextOption(option);
    layout_.setCacheEnabled(true);
    layout_.beginLayout();
    line_ = layout_.createLine();
    layout_.endLayout();
  }
  qreal advance() const { return line_.horizontalAdvance(); }
  void draw(QPainter& painter) const { layout_.draw(&painter, QPointF(0, -line_.ascent())); }

 private:
  QTextLayout layout_;
  QTextLine line_;
};

class Brushwork {
 public:
  Brushwork(QPainter& painter, const Palette& palette) : painter_(painter), palette_(palette) {}

  void operator()(const BoxShape& s) {
    painter_.setPen(pen(palette_, s.stroke, s.stroke_width, s.dash));
    painter_.setBrush(brush(palette_, s.fill));
    const QRectF rect(s.box.x, s.box.y, s.box.w, s.box.h);
    if (s.radius > 0) {
      painter_.drawRoundedRect(rect, s.radius, s.radius);
    } else {
      painter_.drawRect(rect);
    }
  }
  void operator()(const LineShape& s) {
    line(s, s.width, s.dash == Dash::ticks ? Dash::solid : s.dash);
    if (s.dash == Dash::ticks) line(s, kTickWidth, s.dash);
  }
  void operator()(const CircleShape& s) {
    painter_.setPen(pen(palette_, s.stroke, s.stroke_width, Dash::solid));
    painter_.setBrush(brush(palette_, s.fill));
    painter_.drawEllipse(QPointF(s.centre.x, s.centre.y), s.radius, s.radius);
  }
  void operator()(const PolygonShape& s) {
    QPolygonF points;
    for (const Point p : s.points) points.append(QPointF(p.x, p.y));
    painter_.setPen(pen(palette_, s.stroke, s.stroke_width, Dash::solid));
    painter_.setBrush(brush(palette_, s.fill));
    painter_.drawPolygon(points);
  }
  void operator()(const TextShape& s) {
    const QString text = QString::fromStdString(s.text);
    const QFont& font = kept_font(s.size, s.weight);
    std::optional<Laid> laid; // the first time
    qreal& real = advance_of(s);
    if (real < 0) real = laid.emplace(text, font).advance();
    const qreal wanted = s.length / qreal(kPixel);
    const qreal left = s.anchor == Anchor::start ? s.box.x
                       : s.anchor == Anchor::end ? s.box.right() - wanted
                                                 : s.box.x + (s.box.w - wanted) / 2;
    painter_.save();
    painter_.translate(left, s.baseline);
    if (real > 0) painter_.scale(wanted / real, 1);
    painter_.setFont(font);
    painter_.setPen(colour(palette_, s.ink));
    if (laid)
      laid->draw(painter_);
    else
      painter_.drawText(QPointF(0, 0), text);
    painter_.restore();
  }

 private:
  void line(const LineShape& s, int width, Dash dash) {
    painter_.setPen(pen(palette_, s.ink, width, dash));
    painter_.drawLine(QPointF(s.from.x, s.from.y), QPointF(s.to.x, s.to.y));
  }
  QPainter& painter_;
  const Palette& palette_;
};

} // namespace

QFont diagram_font(int size, Weight weight) {
  QFont font(QStringList{"Inter", "Arial", "DejaVu Sans"});
  font.setPixelSize(size);
  font.setWeight(weight == Weight::semibold ? QFont::DemiBold : QFont::Normal);
  font.setHintingPreference(QFont::PreferNoHinting);
  font.setKerning(false); // the table of widths has none
  font.setStyleStrategy(QFont::PreferAntialias);
  return font;
}

void paint(QPainter& painter, const AnyShape& shape, const Palette& palette) {
  painter.setLayoutDirection(Qt::LeftToRight); // numbers and units stay in order, whatever the desktop's
  std::visit(Brushwork(painter, palette), shape);
}

void paint(QPainter& painter, const Drawing& drawing, const Palette& palette) {
  painter.save();
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  for (const AnyShape& shape : drawing.shapes) paint(painter, shape, palette);
  painter.restore();
}

} // namespace snug
