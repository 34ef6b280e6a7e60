#pragma once
// The drawing as PNG and PDF in memory. Callers save the bytes with core/document's routine: Qt's writers do
// not notice a full disk (RELIABILITY 1). A QGuiApplication must exist ("offscreen" will do).

#include "core/base/result.h"
#include "core/layout/drawing.h"
#include "core/layout/palette.h"

#include <QByteArray>

namespace snug {

// Pixels of a picture at the most (256 MiB while it is painted).
inline constexpr std::int64_t kMostPixels = 64'000'000;

// `scale` is pixels for one pixel of the drawing, in hundredths, 10 … 1000. Refused when the picture would
// have more than kMostPixels, with the largest scale that works.
Result<QByteArray> png(const Drawing&, const Palette&, int scale = 200);

enum class Page : std::uint8_t { a4, a3 };

// One page, landscape unless the drawing is higher than wide, the drawing as large as the margins of 10 mm
// allow. Text stays text. The bytes hold the time they were made.
Result<QByteArray> pdf(const Drawing&, const Palette&, Page = Page::a4);

} // namespace snug
