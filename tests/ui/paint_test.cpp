#include "ui/diagram/paint.h"

#include "core/embedded/embedded.h"
#include "core/layout/draw.h"
#include "core/report/svg.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <QFontDatabase>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QImage>
#include <QSvgRenderer>

#include <cmath>

namespace snug {
namespace {

TEST(Paint, TheFontIsInter) {
  ASSERT_TRUE(QFontDatabase::families().contains("Inter")) << "fonts-inter is missing";
  EXPECT_EQ(QFontInfo(diagram_font(12, Weight::regular)).family(), "Inter");
}

// Every text of the samples. The painter's letters are as wide as the table says; with kerning, as readers of
// SVG set it that do not know textLength, text is at most a pixel wider, so it stays in its box.
TEST(Paint, WidthsOfTheTableAreWidthsOfTheFont) {
  double worst = 0;
  for (const EmbeddedFile& file : embedded_samples()) {
    const Lab lab = test::sample(file.name);
    for (const AnyShape& shape : draw(Analysis(lab)).shapes) {
      const auto* text = std::get_if<TextShape>(&shape);
      if (text == nullptr) continue;
      const QString words = QString::fromStdString(text->text);
      QFont font = diagram_font(text->size, text->weight);
      const double real = QFontMetricsF(font).horizontalAdvance(words);
      font.setKerning(true);
      const double kerned = QFontMetricsF(font).horizontalAdvance(words);
      const double table = double(text->length) / kPixel;
      EXPECT_NEAR(real, table, 0.5) << text->text;
      EXPECT_LE(kerned, table + 1) << text->text;
      EXPECT_GE(kerned, 0.85 * table - 1) << text->text;
      worst = std::max(worst, std::abs(real - table));
    }
  }
  RecordProperty("worst_deviation_in_thousandths_of_a_pixel", static_cast<int>(worst * 1000));
}

QImage blank(const Drawing& d) {
  QImage image(d.width, d.height, QImage::Format_RGB32);
  image.fill(Qt::white);
  return image;
}

// The painter and Qt Svg show the same picture.
TEST(Paint, EqualsTheSvg) {
  for (const EmbeddedFile& file : embedded_samples()) {
    const Drawing drawing = draw(Analysis(test::sample(file.name)));
    QImage painted = blank(drawing);
    QImage rendered = blank(drawing);
    {
      QPainter painter(&painted);
      paint(painter, drawing, palette(Theme::light));
    }
    {
      QPainter painter(&rendered);
      painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
      QSvgRenderer(QByteArray::fromStdString(svg(drawing))).render(&painter);
    }
    std::int64_t different = 0;
    for (int y = 0; y < painted.height(); ++y)
      for (int x = 0; x < painted.width(); ++x)
        if (std::abs(qGray(painted.pixel(x, y)) - qGray(rendered.pixel(x, y))) > 96) ++different;
    const std::int64_t all = std::int64_t{painted.width()} * painted.height();
    EXPECT_LT(different * 1000, all * 6)
        << file.name << ": " << different << " of " << all << " pixels"; // 0.6 %
  }
}

} // namespace
} // namespace snug
