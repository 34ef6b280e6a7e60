#pragma once
// The drawing as SVG 1.1, one self-contained file without script or outside reference; the same bytes on
// every computer. Only presentation attributes, which SVG Tiny 1.2 readers know too. Text stays text.

#include "core/layout/drawing.h"
#include "core/layout/palette.h"

#include <string>

namespace snug {

struct SvgOptions {
  Theme theme = Theme::light;
};

// Machines, segments, LANs, cards and the PC are groups with their id ("m12", "s3", "pc") and a title.
std::string svg(const Drawing&, const SvgOptions& = {});

} // namespace snug
