#include "core/report/unicode.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace snug {

namespace {

struct Span {
  char32_t first, last;
};

template <std::size_t N>
bool any(const std::array<Span, N>& spans, char32_t c) {
  return std::any_of(spans.begin(), spans.end(), [c](const Span& s) { return c >= s.first && c <= s.last; });
}

// Pairs "upper, lower" on consecutive code points, the upper one even.
constexpr std::array<Span, 6> kEvenPairs{
    {{0x100, 0x12f}, {0x132, 0x137}, {0x14a, 0x177}, {0x460, 0x481}, {0x48a, 0x4bf}, {0x1e00, 0x1eff}}};
// The upper one odd.
constexpr std::array<Span, 3> kOddPairs{{{0x139, 0x148}, {0x179, 0x17e}, {0x4c1, 0x4ce}}};

} // namespace

bool is_blank(char32_t c) {
  static constexpr std::array<Span, 12> kSpans{{{0x00, 0x20},
                                                {0x7f, 0xa0},
                                                {0xad, 0xad},
                                                {0x34f, 0x34f},
                                                {0x115f, 0x1160},
                                                {0x1680, 0x1680},
                                                {0x180b, 0x180f},
                                                {0x2000, 0x200f},
                                                {0x2028, 0x202f},
                                                {0x205f, 0x206f},
                                                {0x3000, 0x3000},
                                                {0xfe00, 0xfe0f}}};
  return any(kSpans, c) || (c >= 0xe0000 && c <= 0xe0fff);
}

bool is_formula_start(char32_t c) {
  static constexpr char32_t kStarts[] = {U'=',   U'+',   U'-',   U'@',   0x207a, 0x207b, 0x207c,
                                         0x208a, 0x208b, 0x208c, 0x2212, 0xfe62, 0xfe63, 0xfe66,
                                         0xfe6b, 0xff0b, 0xff0d, 0xff1d, 0xff20};
  return std::find(std::begin(kStarts), std::end(kStarts), c) != std::end(kStarts);
}

bool is_file_letter(char32_t c) {
  static constexpr std::array<Span, 14> kSpans{{{0xc0, 0xd6},
                                                {0xd8, 0xf6},
                                                {0xf8, 0x148},
                                                {0x14a, 0x17e},
                                                {0x386, 0x386},
                                                {0x388, 0x3ce},
                                                {0x400, 0x481},
                                                {0x48a, 0x4ff},
                                                {0x1e00, 0x1e99},
                                                {0x1ea0, 0x1ef9},
                                                {0x3041, 0x3096},
                                                {0x30a1, 0x30fa},
                                                {0x4e00, 0x9fff},
                                                {0xac00, 0xd7a3}}};
  return c != 0x387 && any(kSpans, c);
}

char32_t folded(char32_t c) {
  if (c >= U'A' && c <= U'Z') return c + 32;
  if (c == 0x130 || c == 0x131) return U'i';
  if (c == 0x178) return 0xff;
  if (c == 0x3c2) return 0x3c3;
  if (c >= 0xc0 && c <= 0xde && c != 0xd7) return c + 32;
  if (any(kEvenPairs, c) || (c >= 0x4d0 && c <= 0x4ff)) return c | 1U;
  if (any(kOddPairs, c)) return (c + 1) & ~char32_t{1};
  if (c == 0x386) return 0x3ac;
  if (c >= 0x388 && c <= 0x38a) return c + 37;
  if (c == 0x38c) return 0x3cc;
  if (c == 0x38e || c == 0x38f) return c + 63;
  if (c >= 0x391 && c <= 0x3ab) return c + 32;
  if (c >= 0x400 && c <= 0x40f) return c + 80;
  if (c >= 0x410 && c <= 0x42f) return c + 32;
  return c == 0x4c0 ? 0x4cf : c;
}

} // namespace snug
