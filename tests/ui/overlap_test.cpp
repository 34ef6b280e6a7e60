// DECISIONS 25: nothing overlaps in the written SVG, by real glyphs, on every sample and after 200 random
// edits.
#include "core/embedded/embedded.h"
#include "core/layout/draw.h"
#include "core/report/svg.h"
#include "tests/support/random_lab.h"
#include "tests/support/sample.h"
#include "tests/support/scale.h"
#include "tests/ui/svg_boxes.h"

#include <gtest/gtest.h>

#include <QSvgRenderer>

namespace snug {
namespace {

void expect_clear(const Lab& lab, const DrawOptions& options, const std::string& what) {
  const QByteArray bytes = QByteArray::fromStdString(svg(draw(Analysis(lab), options)));
  const test::SvgBoxes boxes = test::read_boxes(bytes);
  ASSERT_EQ(boxes.error.toStdString(), "") << what;
  EXPECT_GE(boxes.cards.size(), lab.machines.size()) << what;
  const QStringList found = test::intersections(boxes);
  EXPECT_TRUE(found.isEmpty()) << what << ": " << found.mid(0, 5).join("; ").toStdString();
}

DrawOptions short_addresses() {
  DrawOptions options;
  options.full_addresses = options.inner_addresses = false;
  return options;
}

TEST(Overlap, MeasureFindsWhatOverlaps) {
  const QByteArray bad = "<svg xmlns=\"http://www.w3.org/2000/svg\">"
                         "<g id=\"m1\"><rect x=\"0\" y=\"0\" width=\"50\" height=\"50\"/></g>"
                         "<g id=\"m2\"><rect x=\"40\" y=\"40\" width=\"50\" height=\"50\"/></g>"
                         "<g id=\"c3\"><line x1=\"45\" y1=\"0\" x2=\"45\" y2=\"30\"/></g>"
                         "<text x=\"30\" y=\"20\" font-size=\"12\" textLength=\"40\">beacon</text>"
                         "<text x=\"55\" y=\"22\" font-size=\"12\" textLength=\"40\">beacon</text></svg>";
  EXPECT_EQ(test::intersections(test::read_boxes(bad)).size(),
            4); // card/card, wire/card, label/label, label/wire
}

TEST(Overlap, Samples) {
  for (const EmbeddedFile& file : embedded_samples()) {
    const Lab lab = test::sample(file.name);
    expect_clear(lab, {}, std::string(file.name));
    expect_clear(lab, short_addresses(), std::string(file.name) + ", short addresses");
  }
}

TEST(Overlap, AfterRandomEdits) {
  for (const EmbeddedFile& file : embedded_samples()) {
    Lab lab = test::sample(file.name);
    test::Random random(2025);
    const int edits = test::scaled(200);
    for (int i = 0; i < edits; ++i) {
      ASSERT_TRUE(apply(lab, test::random_edit(random, lab)));
      if (i % 10 == 9 || i + 1 == edits)
        expect_clear(lab, {}, std::string(file.name) + " after " + std::to_string(i + 1) + " edits");
    }
  }
}

TEST(Overlap, QtSvgReadsEverySample) {
  for (const EmbeddedFile& file : embedded_samples()) {
    const Drawing drawing = draw(Analysis(test::sample(file.name)));
    const QSvgRenderer renderer(QByteArray::fromStdString(svg(drawing)));
    ASSERT_TRUE(renderer.isValid()) << file.name;
    EXPECT_EQ(renderer.defaultSize(), QSize(drawing.width, drawing.height)) << file.name;
  }
}

} // namespace
} // namespace snug
