#pragma once
// The command line as a function: arguments in, exit code out. Data goes to `out`, words to `err`.

#include "core/base/result.h"
#include "core/layout/drawing.h"
#include "core/layout/palette.h"

#include <functional>
#include <istream>
#include <ostream>
#include <string>
#include <vector>

namespace snug::cli {

enum Exit : int { kFine = 0, kFindings = 1, kUsage = 2, kUnreadable = 3, kCannotWrite = 4, kInternal = 5 };

enum class PictureFormat { svg, png, pdf };

struct PictureWish {
  PictureFormat format = PictureFormat::svg;
  Theme theme = Theme::light;
  int scale_percent = 200; // of PNG
  std::string title;       // of PDF
};
// Makes the bytes of a PNG or PDF; given by the program that links a painter.
using Painter = std::function<Result<std::string>(const Drawing&, const PictureWish&)>;

struct Console {
  std::ostream& out;
  std::ostream& err;
  Painter paint;              // empty: SVG only
  std::istream* in = nullptr; // what "-" as a file's name reads
};

// Never throws. `args` without the program's name.
int run(const std::vector<std::string>& args, const Console& console);

} // namespace snug::cli
