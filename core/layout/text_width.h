#pragma once
// How wide text is in Inter, the one font of the drawing (DECISIONS 23), from a table of advance widths; core
// knows no other measure. Kerning and contextual forms are ignored: painters fit the text into the box given
// here.

#include <cstdint>
#include <string_view>
#include <vector>

namespace snug {

enum class Weight { regular, semibold };

// Font sizes and widths are in 1/64 pixel: 16 px is 16 * kPixel.
inline constexpr int kPixel = 64;

// Sum of the advance widths, rounded up; saturates at INT_MAX. `font_size` ≥ 0. Combining marks and invisible
// characters are 0 wide. What the font lacks is 0.6 em in the alphabets up to U+08FF, U+10A0 to 10FF and
// U+1C80 to 1FFF (Latin, Greek, Cyrillic, Armenian, Hebrew, Arabic …), else 1 em. Bytes that are not UTF-8
// count as U+FFFD each.
int text_width(std::string_view utf8, int font_size, Weight);

// The same in font units, not rounded: widths of parts add up to the width of the whole.
std::int64_t text_units(std::string_view utf8, Weight);
inline constexpr int kFontUnitsPerEm = 2816; // Inter's own

// Lines no wider than `max_width` (1/64 pixel), filled from the first to the last word; views into `utf8`.
// Breaks at spaces, which no line begins or ends with; a word wider than a line breaks after its hyphens, a
// part still wider anywhere between characters (never before a mark without width). LF ends a line. A line
// holds at least one character, however wide; text of spaces only is one empty line.
std::vector<std::string_view> wrap(std::string_view utf8, int max_width, int font_size, Weight);

} // namespace snug
