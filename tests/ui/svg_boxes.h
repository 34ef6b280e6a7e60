#pragma once
// Reads cards, wires and labels back from a written SVG and measures real glyphs with Qt (DECISIONS 25).

#include <QByteArray>
#include <QRectF>
#include <QString>

#include <vector>

namespace snug::test {

struct SvgBox {
  QRectF box;
  QString what;
};
struct SvgBoxes {
  QString error;              // empty: the file is well-formed
  std::vector<SvgBox> cards;  // first rectangle of every machine and LAN
  std::vector<SvgBox> wires;  // lines of segments and cards
  std::vector<SvgBox> labels; // ink of every text, letters of marks left out
};

SvgBoxes read_boxes(const QByteArray& svg);
// One sentence for each card/card, wire/card, label/label and label/wire intersection.
QStringList intersections(const SvgBoxes&);

} // namespace snug::test
