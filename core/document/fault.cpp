#include "core/document/fault.h"

#include "core/base/quote.h"
#include "core/document/json_walk.h"
#include "core/text/document_text.h"

namespace snug::detail {

namespace {

TextPlace place_of_spot(const Spot& spot, std::string_view text) {
  const auto offset = find_pointer(text, spot.pointer, spot.part, spot.occurrence);
  return offset ? place_at(text, *offset) : TextPlace{};
}

std::string words(const Spot& spot, std::string_view text) {
  const TextPlace place = place_of_spot(spot, text);
  if (place.line == 0) return spot.pointer;
  return english(say(text::place_in_text, Count{place.line}, Count{place.column}));
}

// First octet up to `last` that is not UTF-8.
std::optional<std::size_t> ill_formed(std::string_view text, std::size_t last) {
  for (std::size_t i = 0; i < text.size() && i <= last;) {
    const CodePoint c = code_point_at(text, i);
    if (!c.valid) return i;
    i += c.length;
  }
  return std::nullopt;
}

char last_before(std::string_view text, std::size_t offset) {
  while (offset > 0 && is_blank(text[offset - 1])) --offset;
  return offset > 0 ? text[offset - 1] : '\0';
}

bool ends_value(char c) { return c == '"' || c == '}' || c == ']' || is_digit(c) || is_letter(c); }
bool starts_value(char c) {
  return c == '"' || c == '{' || c == '[' || c == '-' || is_digit(c) || is_letter(c);
}

Message syntax_message(std::string_view text, std::size_t offset, std::string_view token) {
  const char c = text[offset];
  const char before = last_before(text, offset);
  const std::string shown = quoted_character(text, offset);
  if (before == '\0') return say(text::json_begin, shown);
  if (nlohmann::json::accept(text.substr(0, offset))) return say(text::json_more, shown);
  // Text may follow these, so it is the text itself that is wrong.
  if (c == '"' && std::string_view(":,[{").find(before) != std::string_view::npos)
    return say(text::json_surrogate);
  if (static_cast<unsigned char>(c) < 0x20 && token.starts_with('"')) return say(text::json_control, shown);
  if (token.starts_with('"') && before == '\\') return say(text::json_escape, shown);
  if (c == '/' || c == '#') return say(text::json_comment);
  if (c == '\'') return say(text::json_quote);
  if ((c == '}' || c == ']') && before == ',') return say(text::json_comma_extra, shown);
  if (ends_value(before) && starts_value(c) && offset > 0 && (is_blank(text[offset - 1]) || c == '"'))
    return say(text::json_comma_missing, shown);
  return say(is_letter(c) ? text::json_word : text::json_unexpected, shown);
}

} // namespace

Problem located(Fault fault, std::string_view text, std::string_view file_name) {
  if (fault.first) fault.message.args.emplace_back(words(*fault.first, text));
  const TextPlace place = place_of_spot(fault.spot, text);
  return {std::move(fault.message), std::string(file_name), place.line, place.column,
          std::move(fault.spot.pointer)};
}

Problem problem_at(Message message, std::string_view text, std::size_t offset, std::string_view file_name) {
  const TextPlace place = place_at(text, offset);
  return {std::move(message), std::string(file_name), place.line, place.column, {}};
}

Problem syntax_problem(std::string_view text, std::size_t offset, std::string_view token,
                       std::string_view file_name) {
  if (const auto bad = ill_formed(text, offset))
    return problem_at(say(text::json_utf8, quoted_character(text, *bad)), text, *bad, file_name);
  if (offset >= text.size()) return problem_at(say(text::json_end), text, text.size(), file_name);
  const std::size_t whole = offset + 1 >= token.size() ? offset + 1 - token.size() : offset;
  if (token.size() > 1 && text.substr(whole, token.size()) == token && token.back() == '"') offset = whole;
  while (offset > 0 && (static_cast<unsigned char>(text[offset]) & 0xc0U) == 0x80) --offset;
  return problem_at(syntax_message(text, offset, offset == whole ? "" : token), text, offset, file_name);
}

} // namespace snug::detail
