#include "core/report/escape.h"

#include "core/base/quote.h"
#include "core/report/unicode.h"

#include <array>
#include <charconv>

namespace snug {

namespace {

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

std::string_view without_spaces(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

// Where a block of CommonMark could begin: # + - = : % and "1." or "1)".
std::size_t block_mark(std::string_view text) {
  if (text.empty()) return std::string_view::npos;
  if (std::string_view("#+-=:%").find(text[0]) != std::string_view::npos) return 0;
  std::size_t i = 0;
  while (i < text.size() && is_digit(text[i])) ++i;
  const bool list = i > 0 && i < text.size() && (text[i] == '.' || text[i] == ')') &&
                    (i + 1 == text.size() || text[i + 1] == ' ');
  return list ? i : std::string_view::npos;
}

bool starts_link(std::string_view text, std::size_t at) {
  if (text[at] == ':') return text.substr(at, 3) == "://";
  if (text[at] != '.' || at < 3) return false;
  for (std::size_t i = at - 3; i < at; ++i)
    if (lower(text[i]) != 'w') return false;
  return true;
}

void append_markdown(std::string& out, std::string_view text, std::size_t at, bool escape) {
  const char c = text[at];
  if (c == '&') {
    out += "&amp;";
  } else if (c == '<') {
    out += "&lt;";
  } else if (c == '>') {
    out += "&gt;";
  } else if (c == '@' && at + 1 < text.size() && text[at + 1] != ' ') {
    out += "`@`";
  } else {
    if (escape || std::string_view("\\`*_[]|~^$").find(c) != std::string_view::npos || starts_link(text, at))
      out += '\\';
    out += c;
  }
}

bool needs_guard(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    const CodePoint c = code_point_at(text, at);
    if (!is_blank(c.value)) return is_formula_start(c.value);
    at += c.length;
  }
  return false;
}

} // namespace

std::string clean(std::string_view text) { return cleaned(text, ' '); }
std::string clean_lines(std::string_view text) { return cleaned(text, '\n'); }

std::string xml(std::string_view text) {
  std::string out;
  for (const char c : clean(text)) {
    switch (c) {
    case '&':
      out += "&amp;";
      break;
    case '<':
      out += "&lt;";
      break;
    case '>':
      out += "&gt;";
      break;
    case '"':
      out += "&quot;";
      break;
    case '\'':
      out += "&#39;";
      break;
    default:
      out += c;
    }
  }
  return out;
}

std::string html(std::string_view text) { return xml(text); }

std::string markdown_text(std::string_view text) {
  const std::string whole = clean(text);
  const std::string_view line = without_spaces(whole);
  const std::size_t mark = block_mark(line);
  std::string out;
  for (std::size_t at = 0; at < line.size(); ++at) append_markdown(out, line, at, at == mark);
  return out;
}

std::string markdown_cell(std::string_view text) { return markdown_text(text); }

std::string csv_field(std::string_view text) {
  std::string field = clean_lines(text);
  if (needs_guard(field)) field.insert(field.begin(), '\'');
  const bool at_end = !field.empty() && (field.front() == ' ' || field.back() == ' ');
  if (!at_end && field.find_first_of(",;\"\n") == std::string::npos) return field;
  std::string out = "\"";
  for (const char c : field) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

std::string csv_number(std::int64_t number) {
  std::array<char, 24> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), number).ptr;
  return {digits.data(), end};
}

std::string shell_quote(std::string_view bytes) {
  std::string out = "'";
  for (const char c : bytes) {
    if (c == '\'') {
      out += "'\\''";
    } else if (c != '\0') {
      out += c;
    }
  }
  return out + '\'';
}

} // namespace snug
