// The written SVG as a renderer that others wrote draws it (librsvg), beside the picture that QPainter makes.

#include "core/report/svg.h"

#include "core/embedded/embedded.h"
#include "core/layout/draw.h"
#include "tests/support/process.h"
#include "tests/support/sample.h"
#include "ui/diagram/paint.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include <regex>

namespace snug {
namespace {

using test::run_program;

// Of a thousand pixels so many may be found in one picture and not beside the same place in the other.
// Letters stand a little beside each other, because librsvg knows no textLength and uses kerning. Measured on
// the samples: shapes alone 0 to 0.25, with letters 0.65 to 1.34; without one machine 0.41 or more.
constexpr double kShapes = 0.32, kWhole = 1.6;
constexpr int kFar = 60; // of 255 in any colour

QImage painted(const Drawing& d, Theme theme) {
  QImage image(d.width, d.height, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  paint(painter, d, palette(theme));
  return image;
}

QImage rendered(const std::string& svg_text) {
  const auto ran = run_program({"rsvg-convert", "--format", "png"}, svg_text);
  EXPECT_EQ(ran.code, 0) << ran.err;
  return QImage::fromData(reinterpret_cast<const uchar*>(ran.out.data()), static_cast<int>(ran.out.size()))
      .convertToFormat(QImage::Format_RGB32);
}

bool is_near(QRgb a, QRgb b) {
  return std::abs(qRed(a) - qRed(b)) <= kFar && std::abs(qGreen(a) - qGreen(b)) <= kFar &&
         std::abs(qBlue(a) - qBlue(b)) <= kFar;
}

// Whether the colour stands at this place of the other picture, or one pixel beside it.
bool has_near(const QImage& other, int x, int y, QRgb colour) {
  for (int v = std::max(y - 1, 0); v <= std::min(y + 1, other.height() - 1); ++v) {
    const auto* line = reinterpret_cast<const QRgb*>(other.constScanLine(v));
    for (int u = std::max(x - 1, 0); u <= std::min(x + 1, other.width() - 1); ++u)
      if (is_near(line[u], colour)) return true;
  }
  return false;
}

// Of a thousand pixels.
double differing(const QImage& a, const QImage& b) {
  if (a.size() != b.size() || a.isNull()) return 1000;
  std::int64_t n = 0;
  for (int y = 0; y < a.height(); ++y)
    for (int x = 0; x < a.width(); ++x)
      if (!has_near(b, x, y, a.pixel(x, y)) || !has_near(a, x, y, b.pixel(x, y))) ++n;
  return 1000.0 * double(n) / (double(a.width()) * a.height());
}

std::string without(const std::string& svg_text, const std::string& kind) {
  return std::regex_replace(svg_text, std::regex("<" + kind + "\\b[^>]*(/>|>[^<]*</" + kind + ">)"), "");
}

Drawing without_text(Drawing d) {
  std::erase_if(d.shapes, [](const AnyShape& s) { return std::holds_alternative<TextShape>(s); });
  return d;
}

class Rsvg : public ::testing::TestWithParam<Theme> {};

TEST_P(Rsvg, EverySampleLooksTheSameElsewhere) {
  for (const EmbeddedFile& file : embedded_samples()) {
    const Drawing d = draw(Analysis(test::sample(file.name)));
    const std::string text = svg(d, {GetParam()});
    const double whole = differing(painted(d, GetParam()), rendered(text));
    const double shapes = differing(painted(without_text(d), GetParam()), rendered(without(text, "text")));
    EXPECT_LT(whole, kWhole) << file.name;
    EXPECT_LT(shapes, kShapes) << file.name;
  }
}

// What the bounds let through: no kind of shape that is missing, no machine, no letters.
TEST_P(Rsvg, AMissingLayerIsSeen) {
  const Lab lab = test::sample("skerry-ferries");
  const Drawing d = draw(Analysis(lab));
  const std::string whole = svg(d, {GetParam()}), shapes = without(whole, "text");
  EXPECT_GT(differing(painted(d, GetParam()), rendered(shapes)), kWhole) << "no letters";
  const QImage picture = painted(without_text(d), GetParam());
  for (const char* kind : {"rect", "line", "circle", "polygon"}) {
    const std::string mutated = without(shapes, kind);
    ASSERT_LT(mutated.size(), shapes.size()) << kind;
    EXPECT_GT(differing(picture, rendered(mutated)), kShapes) << kind;
  }
  for (const Machine& m : lab.machines) {
    const std::size_t at = shapes.find("id=\"" + to_text(AnyId(m.id)) + "\"");
    ASSERT_NE(at, std::string::npos) << m.name;
    std::string mutated = shapes;
    mutated.insert(at, "display=\"none\" ");
    EXPECT_GT(differing(picture, rendered(mutated)), kShapes) << m.name;
  }
}

INSTANTIATE_TEST_SUITE_P(Themes, Rsvg, ::testing::Values(Theme::light, Theme::dark));

} // namespace
} // namespace snug
