#include "core/layout/text_width.h"

#include "core/base/quote.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cstdint>
#include <limits>

namespace snug {

namespace {

struct Run {
  char32_t first, last;
  int start;
};
struct Widths {
  std::uint16_t regular, semibold;
};
struct Span {
  char32_t first, last;
};

#include "core/layout/inter_widths.inc"

// The element whose first … last holds `c`, or nullptr; ordered by `first`.
template <typename Ranges>
auto range_of(const Ranges& ranges, char32_t c) -> decltype(ranges.data()) {
  const auto after = std::upper_bound(ranges.begin(), ranges.end(), c,
                                      [](char32_t value, const auto& range) { return value < range.first; });
  if (after == ranges.begin()) return nullptr;
  const auto* found = &*(after - 1);
  return c <= found->last ? found : nullptr;
}

bool is_narrow_alphabet(char32_t c) {
  return c <= 0x8ff || (c >= 0x10a0 && c <= 0x10ff) || (c >= 0x1c80 && c <= 0x1fff);
}

int units(char32_t c, Weight weight) {
  if (range_of(kZeroWidth, c) != nullptr) return 0;
  if (const Run* run = range_of(kRuns, c)) {
    const Widths& widths = kWidths[static_cast<std::size_t>(run->start) + (c - run->first)];
    return weight == Weight::regular ? widths.regular : widths.semibold;
  }
  return is_narrow_alphabet(c) ? kUnitsPerEm * 6 / 10 : kUnitsPerEm;
}

using AsciiUnits = std::array<std::int16_t, 128>;
AsciiUnits ascii_units(Weight weight) {
  AsciiUnits out{};
  for (std::size_t c = 0; c < out.size(); ++c)
    out[c] = static_cast<std::int16_t>(units(static_cast<char32_t>(c), weight));
  return out;
}

static_assert(kUnitsPerEm == kFontUnitsPerEm);

} // namespace

std::int64_t text_units(std::string_view utf8, Weight weight) {
  static const AsciiUnits kRegular = ascii_units(Weight::regular), kBold = ascii_units(Weight::semibold);
  const AsciiUnits& plain = weight == Weight::regular ? kRegular : kBold;
  std::int64_t sum = 0;
  for (std::size_t at = 0; at < utf8.size();) {
    if (const auto byte = static_cast<unsigned char>(utf8[at]); byte < plain.size()) {
      sum += plain[byte];
      ++at;
      continue;
    }
    const CodePoint c = code_point_at(utf8, at);
    sum += units(c.valid ? c.value : 0xfffd, weight);
    at += c.length;
  }
  return sum;
}

int text_width(std::string_view utf8, int font_size, Weight weight) {
  assert(font_size >= 0);
  constexpr std::int64_t kMost = std::numeric_limits<int>::max();
  const std::int64_t sum = text_units(utf8, weight);
  if (font_size > 0 && sum > kMost * kFontUnitsPerEm / font_size) return static_cast<int>(kMost);
  return static_cast<int>((sum * font_size + kFontUnitsPerEm - 1) / kFontUnitsPerEm);
}

} // namespace snug
