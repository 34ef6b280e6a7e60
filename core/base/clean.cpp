#include "core/base/clean.h"

#include "core/base/quote.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

struct Span {
  char32_t first, last;
};

// Controls, direction controls, noncharacters and U+FEFF: what no output may hold.
bool is_unfit(char32_t c) {
  static constexpr std::array<Span, 8> kSpans{{{0x00, 0x1f},
                                               {0x7f, 0x9f},
                                               {0x61c, 0x61c},
                                               {0x200e, 0x200f},
                                               {0x202a, 0x202e},
                                               {0x2066, 0x2069},
                                               {0xfdd0, 0xfdef},
                                               {0xfeff, 0xfeff}}};
  const bool listed =
      std::any_of(kSpans.begin(), kSpans.end(), [c](const Span& s) { return c >= s.first && c <= s.last; });
  return listed || (c & 0xfffeU) == 0xfffe;
}

// Bytes of a line break at `at`: LF, CR, CR LF, VT, FF, U+0085, U+2028, U+2029; 0 where none stands.
std::size_t line_break(std::string_view text, std::size_t at, const CodePoint& c) {
  if (c.value == U'\r') return text.substr(at, 2) == "\r\n" ? 2 : 1;
  const bool is =
      (c.value >= 0x0a && c.value <= 0x0c) || c.value == 0x85 || c.value == 0x2028 || c.value == 0x2029;
  return is ? c.length : 0;
}

// ED A0…BF 80…BF: a surrogate as if it were a character.
bool is_surrogate(std::string_view text, std::size_t at) {
  if (text.size() - at < 3) return false;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
  return byte(0) == 0xed && (byte(1) & 0xe0U) == 0xa0 && (byte(2) & 0xc0U) == 0x80;
}

std::string cleaned(std::string_view text, char for_line_break) {
  if (std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~'; }))
    return std::string(text);
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint c = code_point_at(text, at);
    if (!c.valid) {
      const bool surrogate = is_surrogate(text, at);
      if (!surrogate) out += "\ufffd";
      at += surrogate ? 3 : 1;
      continue;
    }
    const std::size_t break_length = line_break(text, at, c);
    if (break_length != 0) {
      out += for_line_break;
    } else if (c.value == U'\t') {
      out += ' ';
    } else if (!is_unfit(c.value)) {
      out += text.substr(at, c.length);
    }
    at += break_length != 0 ? break_length : c.length;
  }
  return out;
}

} // namespace

std::string clean(std::string_view text) { return cleaned(text, ' '); }
std::string clean_lines(std::string_view text) { return cleaned(text, '\n'); }

} // namespace snug
