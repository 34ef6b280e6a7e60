#include "core/report/escape.h"

#include "core/base/quote.h"
#include "core/report/unicode.h"

#include <array>
#include <charconv>

namespace snug {

namespace {

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

std::string tab_field(std::string_view text) {
  std::string field = clean(text);
  if (needs_guard(field)) field.insert(field.begin(), '\'');
  return field;
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
