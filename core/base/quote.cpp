#include "core/base/quote.h"

#include <array>

namespace snug {

namespace {

constexpr std::size_t kQuoteBytes = 64;
constexpr std::string_view kHex = "0123456789ABCDEF";

std::string hex(char32_t value, int least_digits) {
  std::string out;
  for (int shift = 20; shift >= 0; shift -= 4) {
    const std::size_t digit = (value >> static_cast<unsigned>(shift)) & 0xfU;
    if (digit != 0 || !out.empty() || shift < 4 * least_digits) out += kHex[digit];
  }
  return out;
}

// Spaces, controls, joiners and direction marks (UAX 9, UTS 39): nothing of them can be seen.
bool cannot_be_seen(char32_t c) {
  struct Span {
    char32_t first, last;
  };
  static constexpr std::array<Span, 12> kSpans{{{0x00, 0x20},
                                                {0x7f, 0xa0},
                                                {0xad, 0xad},
                                                {0x300, 0x36f},
                                                {0x61c, 0x61c},
                                                {0x1680, 0x1680},
                                                {0x2000, 0x200f},
                                                {0x2028, 0x202f},
                                                {0x205f, 0x206f},
                                                {0x3000, 0x3000},
                                                {0xe000, 0xf8ff},
                                                {0xfe00, 0xfeff}}};
  for (const Span& s : kSpans)
    if (c >= s.first && c <= s.last) return true;
  return c >= 0xe0000;
}

std::size_t sequence_length(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xc2 && lead < 0xe0) return 2;
  if (lead >= 0xe0 && lead < 0xf0) return 3;
  return lead >= 0xf0 && lead < 0xf5 ? 4 : 0;
}

bool is_scalar(char32_t c, std::size_t length) {
  static constexpr std::array<char32_t, 5> kLeast{0, 0, 0x80, 0x800, 0x10000};
  return c >= kLeast[length] && c <= 0x10ffff && (c < 0xd800 || c > 0xdfff);
}

} // namespace

CodePoint code_point_at(std::string_view text, std::size_t at) {
  const auto lead = static_cast<unsigned char>(text[at]);
  const std::size_t length = sequence_length(lead);
  if (length == 1) return {lead, 1, true};
  if (length == 0 || text.size() - at < length) return {lead, 1, false};
  char32_t c = lead & (0x7fU >> length);
  for (std::size_t i = 1; i < length; ++i) {
    const auto next = static_cast<unsigned char>(text[at + i]);
    if ((next & 0xc0U) != 0x80) return {lead, 1, false};
    c = (c << 6U) | (next & 0x3fU);
  }
  if (!is_scalar(c, length)) return {lead, 1, false};
  return {c, length, true};
}

std::string excerpt(std::string_view text) {
  if (text.size() <= kQuoteBytes) return std::string(text);
  std::size_t end = kQuoteBytes;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xc0U) == 0x80) --end;
  return std::string(text.substr(0, end)) + "…";
}

std::string quoted_character(std::string_view text, std::size_t at) {
  const CodePoint c = code_point_at(text, at);
  if (!c.valid) return "byte " + hex(c.value, 2);
  if (cannot_be_seen(c.value)) return "U+" + hex(c.value, 4);
  if (c.value < 0x80) return std::string(1, text[at]);
  return std::string(text.substr(at, c.length)) + " (U+" + hex(c.value, 4) + ")";
}

std::string_view trimmed(std::string_view text) {
  static constexpr std::array<std::string_view, 8> kBlank{" ",  "\t", "\n",     "\r",
                                                          "\v", "\f", "\u00a0", "\u202f"};
  bool again = true;
  while (again) {
    again = false;
    for (const std::string_view blank : kBlank) {
      if (text.starts_with(blank)) text.remove_prefix(blank.size()), again = true;
      if (text.ends_with(blank)) text.remove_suffix(blank.size()), again = true;
    }
  }
  return text;
}

} // namespace snug
