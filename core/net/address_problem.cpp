#include "core/base/quote.h"
#include "core/net/address_read.h"
#include "core/text/net_text.h"

#include <algorithm>
#include <vector>

namespace snug {

namespace {

template <typename... A>
Problem problem(const Template& t, A&&... args) {
  return Problem{say(t, std::forward<A>(args)...), {}, 0, 0, {}};
}

std::vector<std::string_view> split(std::string_view s, char separator) {
  std::vector<std::string_view> parts;
  std::size_t start = 0;
  for (std::size_t at = s.find(separator); at != std::string_view::npos; at = s.find(separator, start)) {
    parts.push_back(s.substr(start, at - start));
    start = at + 1;
  }
  parts.push_back(s.substr(start));
  return parts;
}

bool looks_like_name(std::string_view s) {
  const auto part_of_name = [](char c) {
    return is_letter(c) || is_digit(c) || c == '-' || c == '.' || c == '_';
  };
  return std::all_of(s.begin(), s.end(), part_of_name) && std::any_of(s.begin(), s.end(), is_letter);
}

Problem octet_problem(std::string_view all, std::string_view octet) {
  const std::size_t first = std::min(octet.find_first_not_of('0'), octet.size() - 1);
  const std::string_view number = octet.substr(first);
  if (!read_number(number, 255)) return problem(text::address4_octet, excerpt(all), excerpt(octet));
  return problem(text::address4_zero, excerpt(all), excerpt(octet), number);
}

Problem v4_problem(std::string_view all, std::string_view dotted) {
  if (looks_like_name(dotted)) return problem(text::address_name, excerpt(all));
  for (std::size_t i = 0; i < dotted.size(); ++i)
    if (!is_digit(dotted[i]) && dotted[i] != '.')
      return problem(text::address_character, excerpt(all), quoted_character(dotted, i));
  const auto parts = split(dotted, '.');
  for (const std::string_view p : parts)
    if (p.empty()) return problem(text::address4_empty_part, excerpt(all));
  if (parts.size() != 4)
    return problem(text::address4_parts, excerpt(all), Count{static_cast<std::int64_t>(parts.size())});
  for (const std::string_view p : parts)
    if (!read_number(p, 255)) return octet_problem(all, p);
  return problem(text::address_character, excerpt(all), quoted_character(dotted, 0));
}

std::optional<Problem> v6_shape_problem(std::string_view s) {
  for (std::size_t i = 0; i < s.size(); ++i)
    if (hex_value(s[i]) < 0 && s[i] != ':' && s[i] != '.')
      return problem(text::address_character, excerpt(s), quoted_character(s, i));
  if (s.find(":::") != std::string_view::npos) return problem(text::address6_colons, excerpt(s));
  const std::size_t gap = s.find("::");
  if (gap != std::string_view::npos && s.find("::", gap + 2) != std::string_view::npos)
    return problem(text::address6_twice, excerpt(s));
  const bool edge = (s.starts_with(':') && !s.starts_with("::")) || (s.ends_with(':') && !s.ends_with("::"));
  if (edge) return problem(text::address6_edge, excerpt(s));
  return std::nullopt;
}

Problem v6_problem(std::string_view s) {
  if (auto shape = v6_shape_problem(s)) return std::move(*shape);
  std::int64_t fields = 0;
  const auto parts = split(s, ':');
  for (const std::string_view& p : parts) {
    if (p.empty()) continue;
    const bool dotted = p.find('.') != std::string_view::npos;
    if (dotted && &p != &parts.back()) return problem(text::address6_dotted_place, excerpt(s), excerpt(p));
    if (dotted && !is_ipv4_text(p)) return v4_problem(s, p);
    if (!dotted && p.size() > 4)
      return problem(text::address6_field, excerpt(s), excerpt(p),
                     Count{static_cast<std::int64_t>(p.size())});
    fields += dotted ? 2 : 1;
  }
  if (fields < 8) return problem(text::address6_few, excerpt(s), Count{fields});
  return problem(text::address6_many, excerpt(s), Count{fields});
}

// Texts that hold a good address and something around it.
std::optional<Problem> surplus_problem(std::string_view s) {
  const auto good_until = [s](char stop) -> std::optional<std::string> {
    const std::size_t at = s.find(stop);
    if (at == std::string_view::npos || !read_address(s.substr(0, at))) return std::nullopt;
    return std::string(s.substr(0, at));
  };
  if (const auto a = good_until('/')) return problem(text::address_has_length, excerpt(s), *a);
  if (const auto a = good_until('%'))
    return problem(text::address_zone, excerpt(s), excerpt(s.substr(a->size() + 1)), *a);
  const std::size_t close = s.find(']');
  if (s.starts_with('[') && close != std::string_view::npos && read_address(s.substr(1, close - 1)))
    return problem(text::address_brackets, excerpt(s), s.substr(1, close - 1));
  const std::string_view port = s.substr(std::min(s.find(':'), s.size() - 1) + 1);
  const bool digits = !port.empty() && std::all_of(port.begin(), port.end(), is_digit);
  if (const auto a = good_until(':'); a && digits) return problem(text::address_port, excerpt(s), *a);
  return std::nullopt;
}

} // namespace

std::optional<int> read_number(std::string_view s, int most) {
  if (s.empty() || s.size() > 9 || (s.size() > 1 && s[0] == '0')) return std::nullopt;
  int value = 0;
  for (const char c : s) {
    if (!is_digit(c)) return std::nullopt;
    value = value * 10 + (c - '0');
  }
  if (value > most) return std::nullopt;
  return value;
}

Problem address_problem(std::string_view typed) {
  const std::string_view s = trimmed(typed);
  if (s.empty()) return problem(text::address_empty);
  if (s.size() != typed.size() && read_address(s)) return problem(text::address_spaces, excerpt(typed), s);
  if (auto surplus = surplus_problem(s)) return std::move(*surplus);
  return s.find(':') == std::string_view::npos ? v4_problem(s, s) : v6_problem(s);
}

} // namespace snug
