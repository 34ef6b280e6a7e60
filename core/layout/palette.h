#pragma once
// Colours of the drawing by theme. Text and lines reach 4.5:1 on every surface they stand on (WCAG 2.2 SC
// 1.4.3); segment and severity colours are CONVENTIONS 4. `print` is readable in black and white: segments
// differ by line pattern, letter and name only.

#include "core/layout/drawing.h"

#include <array>

namespace snug {

enum class Theme : std::uint8_t { light, dark, print };

struct Palette {
  std::array<std::uint32_t, kInkCount> rgb{}; // 0xRRGGBB; Ink::none is not used
  std::uint32_t of(Ink i) const { return rgb[static_cast<std::size_t>(i)]; }
};

const Palette& palette(Theme);

// Lengths of strokes and gaps in tenths of a pixel, drawn with flat ends; empty: solid. `ticks` gives the
// cross strokes, drawn over a solid line and wider.
struct DashPattern {
  std::array<int, 4> lengths{};
  int count = 0;
};
DashPattern dash_pattern(Dash);
inline constexpr int kTickWidth = 110; // of the cross strokes, tenths of a pixel

} // namespace snug
