#include "core/findings/secrets.h"

#include "core/base/quote.h"

#include <algorithm>
#include <array>
#include <string>

namespace snug {

namespace {

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
bool is_word(char c) { return is_letter(c) || is_digit(c) || static_cast<unsigned char>(c) >= 0x80; }

// The value behind "word:" up to the end of the line.
bool holds_value(std::string_view rest) {
  rest = trimmed(rest.substr(0, rest.find_first_of("\r\n")));
  const std::size_t end = std::min(rest.find_first_of(" \t"), rest.size());
  const std::string_view first = rest.substr(0, end);
  const bool letters = std::any_of(first.begin(), first.end(), is_letter);
  const bool digits = std::any_of(first.begin(), first.end(), is_digit);
  if (!letters && !digits) return false; // blank, a line, a question mark
  if (letters && digits && first.size() >= 4) return true;
  static constexpr std::array<std::string_view, 6> kNone{"none", "no", "unknown", "later", "yes", "sealed"};
  return end == rest.size() && std::find(kNone.begin(), kNone.end(), first) == kNone.end();
}

bool has_named_value(std::string_view text) {
  static constexpr std::array<std::string_view, 14> kWords{
      "password", "passwort", "passphrase", "passwd",      "pass",        "pwd",         "pin",
      "secret",   "token",    "api key",    "licence key", "product key", "license key", "private key"};
  for (const std::string_view word : kWords) {
    for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
      if (at > 0 && is_word(text[at - 1])) continue;
      std::size_t end = at + word.size();
      while (end < text.size() && (text[end] == ' ' || text[end] == '\t')) ++end;
      if (end < text.size() && (text[end] == ':' || text[end] == '=') && holds_value(text.substr(end + 1)))
        return true;
    }
  }
  return false;
}

// At least four groups of four to six letters and digits with hyphens between, some of each.
bool is_key_in_groups(std::string_view token) {
  std::size_t groups = 0, length = 0, digits = 0, letters = 0;
  for (std::size_t i = 0; i <= token.size(); ++i) {
    if (i == token.size() || token[i] == '-') {
      if (length < 4 || length > 6) return false;
      ++groups;
      length = 0;
      continue;
    }
    if (!is_letter(token[i]) && !is_digit(token[i])) return false;
    ++length;
    is_digit(token[i]) ? ++digits : ++letters;
  }
  return groups >= 4 && digits >= 2 && letters >= 2;
}

// 32 or more characters of Base64 or hexadecimal with letters and digits mixed throughout.
bool is_long_key(std::string_view token) {
  if (token.size() < 32) return false;
  std::size_t digits = 0, letters = 0;
  for (const char c : token) {
    if (is_digit(c))
      ++digits;
    else if (is_letter(c))
      ++letters;
    else if (c != '+' && c != '/' && c != '=' && c != '_')
      return false;
  }
  return digits >= 4 && letters >= 4 && std::count(token.begin(), token.end(), '/') < 3;
}

bool has_key(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    while (at < text.size() && is_space(text[at])) ++at;
    std::size_t end = at;
    while (end < text.size() && !is_space(text[end])) ++end;
    std::string_view token = text.substr(at, end - at);
    while (!token.empty() && std::string_view(".,;:!?)\"'").find(token.back()) != std::string_view::npos)
      token.remove_suffix(1);
    while (!token.empty() && std::string_view("(\"'").find(token.front()) != std::string_view::npos)
      token.remove_prefix(1);
    if (is_key_in_groups(token) || is_long_key(token)) return true;
    at = end;
  }
  return false;
}

} // namespace

bool looks_secret(std::string_view text) {
  if (text.empty()) return false;
  std::string low(text);
  std::transform(low.begin(), low.end(), low.begin(), lower);
  const bool head =
      low.find("-----begin ") != std::string::npos && low.find("private key") != std::string::npos;
  return head || has_named_value(low) || has_key(text);
}

} // namespace snug
