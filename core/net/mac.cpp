#include "core/net/mac.h"

#include "core/base/quote.h"
#include "core/text/net_text.h"

#include <algorithm>
#include <array>
#include <optional>

namespace snug {

namespace {

struct Form {
  std::size_t size;
  std::size_t group; // digits between separators
  std::string_view separators;
};
constexpr std::array<Form, 3> kForms{{{17, 2, ":-"}, {14, 4, "."}, {12, 12, ""}}};
constexpr std::string_view kSeparators = ":-.";

std::optional<Mac> read_grouped(std::string_view s, const Form& form) {
  const char separator = form.separators.empty() ? '\0' : s[form.group];
  if (separator != '\0' && form.separators.find(separator) == std::string_view::npos) return std::nullopt;
  std::uint64_t bits = 0;
  for (std::size_t i = 0; i < s.size(); ++i) {
    if (i % (form.group + 1) == form.group) {
      if (s[i] != separator) return std::nullopt;
      continue;
    }
    const int digit = hex_value(s[i]);
    if (digit < 0) return std::nullopt;
    bits = (bits << 4U) | static_cast<unsigned>(digit);
  }
  return Mac(bits);
}

std::optional<Mac> read_mac(std::string_view s) {
  for (const Form& form : kForms)
    if (s.size() == form.size) return read_grouped(s, form);
  return std::nullopt;
}

// Groups of one or two digits, six of them: what was meant.
std::optional<Mac> from_short_octets(std::string_view s) {
  std::uint64_t bits = 0;
  int octets = 0;
  for (std::size_t i = 0; i < s.size(); ++octets) {
    unsigned octet = 0;
    const std::size_t start = i;
    for (; i < s.size() && hex_value(s[i]) >= 0; ++i)
      octet = octet * 16 + static_cast<unsigned>(hex_value(s[i]));
    if (i == start || i - start > 2) return std::nullopt;
    bits = (bits << 8U) | octet;
    if (i < s.size() && ++i == s.size()) return std::nullopt;
  }
  if (octets != 6) return std::nullopt;
  return Mac(bits);
}

tl::unexpected<Problem> refuse(std::string_view typed) {
  const std::string_view s = trimmed(typed);
  if (s.empty()) return fail(text::mac_empty);
  if (s.size() != typed.size())
    if (const auto mac = read_mac(s)) return fail(text::mac_spaces, excerpt(typed), to_text(*mac));
  std::string digits, separators;
  for (std::size_t i = 0; i < s.size(); ++i) {
    if (hex_value(s[i]) >= 0)
      digits += s[i];
    else if (kSeparators.find(s[i]) == std::string_view::npos)
      return fail(text::mac_character, excerpt(s), quoted_character(s, i));
    else if (separators.find(s[i]) == std::string::npos)
      separators += s[i];
  }
  if (digits.size() == 16) return fail(text::mac_eui64, excerpt(s));
  if (digits.size() < 12)
    if (const auto mac = from_short_octets(s)) return fail(text::mac_short_octet, excerpt(s), to_text(*mac));
  if (digits.size() != 12)
    return fail(text::mac_digits, excerpt(s), Count{static_cast<std::int64_t>(digits.size())});
  const std::string meant = to_text(*read_mac(digits));
  return separators.size() > 1 ? fail(text::mac_mixed, excerpt(s), meant)
                               : fail(text::mac_groups, excerpt(s), meant);
}

} // namespace

Result<Mac> parse_mac(std::string_view s) {
  if (const auto mac = read_mac(s)) return *mac;
  return refuse(s);
}

void append_text(std::string& out, const Mac& mac) {
  static constexpr std::string_view kDigits = "0123456789abcdef";
  std::array<char, 17> buffer;
  buffer.fill(':');
  for (std::size_t i = 0; i < 12; ++i)
    buffer[i / 2 * 3 + i % 2] = kDigits[(mac.bits() >> static_cast<unsigned>(44 - 4 * i)) & 0xfU];
  out.append(buffer.data(), buffer.size());
}

std::string to_text(const Mac& mac) {
  std::string out;
  append_text(out, mac);
  return out;
}

} // namespace snug
