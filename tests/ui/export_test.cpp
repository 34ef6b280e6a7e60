#include "ui/diagram/export.h"

#include "core/layout/draw.h"
#include "tests/support/process.h"
#include "tests/support/sample.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QTemporaryDir>

namespace snug {
namespace {

Drawing ferry() { return draw(Analysis(test::sample("skerry-ferries"))); }
const Palette& light() { return palette(Theme::light); }

TEST(Export, PngHasTheSizeOfItsScale) {
  const Drawing d = ferry();
  for (const int scale : {50, 100, 250}) {
    const auto bytes = png(d, light(), scale);
    ASSERT_TRUE(bytes);
    const QImage image = QImage::fromData(*bytes, "PNG");
    EXPECT_EQ(image.width(), (d.width * scale + 50) / 100);
    EXPECT_EQ(image.height(), (d.height * scale + 50) / 100);
  }
}

TEST(Export, PngShowsSomething) {
  const auto bytes = png(ferry(), light(), 100);
  ASSERT_TRUE(bytes);
  const QImage image = QImage::fromData(*bytes, "PNG").convertToFormat(QImage::Format_RGB32);
  QSet<QRgb> colours;
  for (int y = 0; y < image.height(); y += 3)
    for (int x = 0; x < image.width(); x += 3) colours.insert(image.pixel(x, y));
  EXPECT_GT(colours.size(), 50);
}

// RELIABILITY 30: scale 1 … 64 on a picture of 1,000 machines' size: an error with a sentence above the cap,
// before any memory is taken.
TEST(Export, PngRefusesTooManyPixels) {
  Drawing d;
  d.width = 12'000;
  d.height = 9'000;
  const auto refused = png(d, light(), 100);
  ASSERT_FALSE(refused);
  const std::string words = english(refused.error());
  EXPECT_NE(words.find("12000 by 9000 pixels"), std::string::npos) << words;
  EXPECT_NE(words.find("at most 76 %"), std::string::npos) << words; // 9120 * 6840 = 62.4 million
  EXPECT_FALSE(png(d, light(), 6400));
  EXPECT_FALSE(png(d, light(), 0));
  d.width = d.height = 1'000'000'000;
  EXPECT_NE(english(png(d, light(), 1000).error()).find("write SVG"), std::string::npos);
}

std::string pdf_tool(const QByteArray& bytes, std::vector<std::string> command) {
  QTemporaryDir folder;
  const QString path = folder.filePath("diagram.pdf");
  QFile file(path);
  EXPECT_TRUE(file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size());
  file.close();
  command.push_back(path.toStdString());
  if (command.front() == "pdftotext") command.emplace_back("-");
  const auto ran = test::run_program(command);
  EXPECT_EQ(ran.code, 0) << ran.err;
  return ran.out;
}

// Poppler's pdftotext finds every name and address.
TEST(Export, PdfTextCanBeSearched) {
  const auto bytes = pdf(ferry(), light());
  ASSERT_TRUE(bytes);
  const std::string text = pdf_tool(*bytes, {"pdftotext"});
  for (const char* words : {"beacon", "wheelhouse", "tickets-db", "172.22.10.254", "172.22.40.41",
                            "Passengers", "Skerry Ferries booking lab", "room for 2.8 GiB"})
    EXPECT_NE(text.find(words), std::string::npos) << words;
}

TEST(Export, PdfIsOnePageWithATitle) {
  for (const Page page : {Page::a4, Page::a3}) {
    const auto bytes = pdf(ferry(), light(), page);
    ASSERT_TRUE(bytes);
    const std::string info = pdf_tool(*bytes, {"pdfinfo"});
    EXPECT_NE(info.find("Pages:           1"), std::string::npos) << info;
    EXPECT_NE(info.find("Skerry Ferries booking lab"), std::string::npos) << info;
    // ISO 216: A4 210 x 297 mm, A3 297 x 420 mm, in points of 1/72 inch.
    EXPECT_NE(info.find(page == Page::a4 ? "842 x 595" : "1191 x 842"), std::string::npos) << info;
  }
}

TEST(Export, HighPicturesStandUpright) {
  Drawing d = ferry();
  d.height = 3 * d.width;
  const auto bytes = pdf(d, light());
  ASSERT_TRUE(bytes);
  EXPECT_NE(pdf_tool(*bytes, {"pdfinfo"}).find("595 x 842"), std::string::npos);
}

} // namespace
} // namespace snug
