#include "core/model/basics.h"

#include "core/text/model_text.h"

#include <charconv>

namespace snug {

namespace {

int days_in(int year, int month) {
  constexpr std::array<int, 12> kDays{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return kDays[static_cast<std::size_t>(month - 1)] + (month == 2 && leap ? 1 : 0);
}

std::optional<int> digits(std::string_view s) {
  int n = 0;
  for (const char c : s) {
    if (c < '0' || c > '9') return std::nullopt;
    n = n * 10 + (c - '0');
  }
  return n;
}

} // namespace

Result<Date> parse_date(std::string_view s) {
  if (s.size() != 10 || s[4] != '-' || s[7] != '-') return fail(text::date_form, s);
  const auto year = digits(s.substr(0, 4));
  const auto month = digits(s.substr(5, 2));
  const auto day = digits(s.substr(8, 2));
  if (!year || !month || !day || *year < 1 || *month < 1 || *month > 12 || *day < 1 ||
      *day > days_in(*year, *month))
    return fail(text::date_form, s);
  return Date{static_cast<std::int16_t>(*year), static_cast<std::int8_t>(*month),
              static_cast<std::int8_t>(*day)};
}

std::string to_text(const Date& d) {
  std::string out = "0000-00-00";
  const auto put = [&out](std::size_t at, std::size_t width, int n) {
    for (std::size_t i = width; i-- > 0; n /= 10) out[at + i] = static_cast<char>('0' + n % 10);
  };
  put(0, 4, d.year);
  put(5, 2, d.month);
  put(8, 2, d.day);
  return out;
}

} // namespace snug
