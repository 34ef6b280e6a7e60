#include "tests/ui/svg_boxes.h"

#include "ui/diagram/paint.h"

#include <QFontMetricsF>
#include <QXmlStreamReader>

namespace snug::test {

namespace {

// The kind letter of an id: m, l: cards; s, c: wires.
QChar kind_of(const QString& id) { return id.isEmpty() ? QChar() : id[0]; }

struct Reader {
  explicit Reader(const QByteArray& svg) : xml(svg) {}
  SvgBoxes read() {
    while (!xml.atEnd()) {
      const auto token = xml.readNext();
      if (token == QXmlStreamReader::StartElement) start();
      if (token == QXmlStreamReader::EndElement && xml.name() == u"g") group.clear();
    }
    if (xml.hasError()) out.error = xml.errorString();
    return std::move(out);
  }
  qreal number(const char* name) const { return xml.attributes().value(QLatin1String(name)).toDouble(); }
  void start() {
    const auto name = xml.name();
    if (name == u"g") {
      group = xml.attributes().value("id").toString();
      card_seen = false;
    } else if (name == u"rect") {
      rect();
    } else if (name == u"line") {
      line();
    } else if (name == u"text") {
      text();
    }
  }
  void rect() {
    const QChar kind = kind_of(group);
    if ((kind != 'm' && kind != 'l') || card_seen) return;
    card_seen = true;
    out.cards.push_back({QRectF(number("x"), number("y"), number("width"), number("height")), group});
  }
  void line() {
    const QChar kind = kind_of(group);
    if (kind != 's' && kind != 'c') return;
    const QPointF from(number("x1"), number("y1"));
    const QPointF to(number("x2"), number("y2"));
    const qreal width = xml.attributes().hasAttribute("stroke-width") ? number("stroke-width") : 1;
    const bool upright = from.x() == to.x();
    QRectF box = QRectF(from, to).normalized();
    box = upright ? box.adjusted(-width / 2, 0, width / 2, 0) : box.adjusted(0, -width / 2, 0, width / 2);
    out.wires.push_back({box, "line of " + group});
  }
  void text() {
    const QPointF at(number("x"), number("y"));
    const int size = static_cast<int>(number("font-size"));
    const qreal length = number("textLength");
    const auto anchor = xml.attributes().value("text-anchor").toString();
    const Weight weight = xml.attributes().hasAttribute("font-weight") ? Weight::semibold : Weight::regular;
    const QString words = xml.readElementText();
    if (words == "!" || words == "i") return;
    const QFontMetricsF metrics(diagram_font(size, weight));
    const qreal real = metrics.horizontalAdvance(words);
    QRectF ink = metrics.tightBoundingRect(words);
    if (ink.isEmpty()) return;
    const qreal squeeze = real > 0 ? length / real : 1;
    const qreal left = anchor == "end" ? at.x() - length : anchor == "middle" ? at.x() - length / 2 : at.x();
    ink = QRectF(left + ink.x() * squeeze, at.y() + ink.y(), ink.width() * squeeze, ink.height());
    out.labels.push_back({ink, '"' + words + '"'});
  }
  QXmlStreamReader xml;
  SvgBoxes out;
  QString group;
  bool card_seen = false;
};

bool nested(const QRectF& a, const QRectF& b) { return a.contains(b) || b.contains(a); }

} // namespace

SvgBoxes read_boxes(const QByteArray& svg) { return Reader(svg).read(); }

QStringList intersections(const SvgBoxes& boxes) {
  QStringList out;
  const auto tell = [&out](const SvgBox& a, const SvgBox& b) { out << a.what + " over " + b.what; };
  for (std::size_t i = 0; i < boxes.cards.size(); ++i) {
    for (std::size_t j = i + 1; j < boxes.cards.size(); ++j)
      if (boxes.cards[i].box.intersects(boxes.cards[j].box) &&
          !nested(boxes.cards[i].box, boxes.cards[j].box))
        tell(boxes.cards[i], boxes.cards[j]);
    for (const SvgBox& wire : boxes.wires)
      if (wire.box.intersects(boxes.cards[i].box)) tell(wire, boxes.cards[i]);
  }
  for (std::size_t i = 0; i < boxes.labels.size(); ++i) {
    for (std::size_t j = i + 1; j < boxes.labels.size(); ++j)
      if (boxes.labels[i].box.intersects(boxes.labels[j].box)) tell(boxes.labels[i], boxes.labels[j]);
    for (const SvgBox& wire : boxes.wires)
      if (wire.box.intersects(boxes.labels[i].box)) tell(boxes.labels[i], wire);
  }
  return out;
}

} // namespace snug::test
