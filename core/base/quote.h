#pragma once
// How values that a person typed are quoted inside sentences.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace snug {

// The code point that starts at byte `at` and its length in bytes; `valid` false and length 1 where the
// bytes are not UTF-8 (RFC 3629).
struct CodePoint {
  char32_t value = 0;
  std::size_t length = 1;
  bool valid = false;
};
CodePoint code_point_at(std::string_view text, std::size_t at); // at < text.size()

// The text itself, cut after 64 bytes (at a character's border) with "…".
std::string excerpt(std::string_view text);
// The character at byte `at` for a sentence: "x" for visible ASCII; "é (U+00E9)" for other letters;
// "U+202E" alone for spaces, controls and marks that cannot be seen; "byte E9" where it is not UTF-8.
std::string quoted_character(std::string_view text, std::size_t at);
// Without ASCII white space and no-break spaces (U+00A0, U+202F) at both ends.
std::string_view trimmed(std::string_view text);

inline constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
inline constexpr bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
inline constexpr char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
// 0…15, or -1 for a character that is no hexadecimal digit.
inline constexpr int hex_value(char c) {
  if (is_digit(c)) return c - '0';
  const char l = lower(c);
  return l >= 'a' && l <= 'f' ? l - 'a' + 10 : -1;
}

} // namespace snug
