#include "ui/diagram/export.h"

#include "core/report/pdf_date.h"
#include "core/text/picture_text.h"
#include "ui/diagram/paint.h"

#include <QBuffer>
#include <QHashFunctions>
#include <QImage>
#include <QPageLayout>
#include <QPageSize>
#include <QPdfWriter>

#include <algorithm>

namespace snug {

namespace {

constexpr int kLeastScale = 10;
constexpr int kMostScale = 1000;
constexpr int kPdfResolution = 1200; // dots per inch
constexpr qreal kPdfMargin = 10;     // millimetres

std::int64_t scaled(int length, int scale) {
  return std::max<std::int64_t>((std::int64_t{length} * scale + 50) / 100, 1);
}

bool fits(const Drawing& d, int scale) {
  const std::int64_t w = scaled(d.width, scale);
  const std::int64_t h = scaled(d.height, scale);
  return w <= kMostPixels && h <= kMostPixels / w;
}

Result<void> check_size(const Drawing& d, int scale) {
  if (scale < kLeastScale || scale > kMostScale) return fail(text::picture_scale, Count{scale});
  if (fits(d, scale)) return {};
  const Count w{scaled(d.width, scale)};
  const Count h{scaled(d.height, scale)};
  for (int s = scale; s >= kLeastScale; --s)
    if (fits(d, s)) return fail(text::picture_large, w, h, Count{s});
  return fail(text::picture_huge, w, h);
}

} // namespace

Result<QByteArray> png(const Drawing& drawing, const Palette& palette, int scale) {
  if (auto ok = check_size(drawing, scale); !ok) return fail(std::move(ok.error()));
  const auto w = static_cast<int>(scaled(drawing.width, scale));
  const auto h = static_cast<int>(scaled(drawing.height, scale));
  QImage image(w, h, QImage::Format_RGB32);
  if (image.isNull()) return fail(text::picture_memory, Count{w}, Count{h});
  image.setDotsPerMeterX(3780 * scale / 100); // 96 dots per inch at scale 100
  image.setDotsPerMeterY(3780 * scale / 100);
  image.fill(QColor::fromRgb(palette.of(Ink::sheet)));
  QPainter painter(&image);
  painter.scale(scale / 100.0, scale / 100.0);
  paint(painter, drawing, palette);
  painter.end();
  image.setText("Title", QString::fromStdString(drawing.title));
  QByteArray bytes;
  QBuffer buffer(&bytes);
  if (!buffer.open(QIODevice::WriteOnly) || !image.save(&buffer, "PNG"))
    return fail(text::picture_writer, "PNG");
  return bytes;
}

namespace {

// The library lists fonts in the order of a hash, which is another one in every run.
class SteadyHashes {
 public:
  SteadyHashes() { QHashSeed::setDeterministicGlobalSeed(); }
  ~SteadyHashes() { QHashSeed::resetRandomGlobalSeed(); }
  SteadyHashes(const SteadyHashes&) = delete;
  SteadyHashes& operator=(const SteadyHashes&) = delete;
};

} // namespace

Result<QByteArray> pdf(const Drawing& drawing, const Palette& palette, Page page) {
  const SteadyHashes steady;
  QByteArray bytes;
  QBuffer buffer(&bytes);
  if (!buffer.open(QIODevice::WriteOnly)) return fail(text::picture_writer, "PDF");
  QPdfWriter writer(&buffer);
  writer.setResolution(kPdfResolution);
  writer.setTitle(QString::fromStdString(drawing.title));
  writer.setCreator("Snuglab");
  const auto turn = drawing.height > drawing.width ? QPageLayout::Portrait : QPageLayout::Landscape;
  const auto size = page == Page::a3 ? QPageSize::A3 : QPageSize::A4;
  writer.setPageLayout(QPageLayout(QPageSize(size), turn,
                                   QMarginsF(kPdfMargin, kPdfMargin, kPdfMargin, kPdfMargin),
                                   QPageLayout::Millimeter));
  QPainter painter;
  if (!painter.begin(&writer)) return fail(text::picture_writer, "PDF");
  const qreal scale =
      std::min(qreal(writer.width()) / drawing.width, qreal(writer.height()) / drawing.height);
  painter.translate((writer.width() - drawing.width * scale) / 2,
                    (writer.height() - drawing.height * scale) / 2);
  painter.scale(scale, scale);
  paint(painter, drawing, palette);
  if (!painter.end()) return fail(text::picture_writer, "PDF");
  return QByteArray::fromStdString(without_creation_date(bytes.toStdString()));
}

} // namespace snug
