#include "core/base/size.h"

#include "core/base/quote.h"
#include "core/text/size_text.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <optional>

namespace snug {

namespace {

constexpr int kMaxFractionDigits = 12; // 10^12 * kMibPerTib fits 63 bits

struct Unit {
  std::string_view word;
  std::int64_t mib;
};
constexpr std::array<Unit, 6> kUnits{
    {{"m", 1}, {"mib", 1}, {"g", kMibPerGib}, {"gib", kMibPerGib}, {"t", kMibPerTib}, {"tib", kMibPerTib}}};
// 10^exponent bytes, and the binary unit people mean (IEC 80000-13).
struct DecimalUnit {
  std::string_view word, shown, meant;
  std::size_t exponent;
};
constexpr std::array<DecimalUnit, 3> kDecimalUnits{
    {{"mb", "MB", "MiB", 6}, {"gb", "GB", "GiB", 9}, {"tb", "TB", "TiB", 12}}};

struct Typed {
  std::string_view all;      // trimmed
  std::string_view number;   // digits and separators
  std::string_view whole;    // digits before the separator
  std::string_view fraction; // digits after it
  std::string unit;          // lower case
  std::string_view unit_as_typed;
};

bool is_separator(char c) { return c == '.' || c == ','; }

Typed split(std::string_view text) {
  Typed t;
  t.all = trimmed(text);
  const auto number_end =
      std::find_if(t.all.begin(), t.all.end(), [](char c) { return !is_digit(c) && !is_separator(c); });
  t.number = t.all.substr(0, static_cast<std::size_t>(number_end - t.all.begin()));
  t.unit_as_typed = trimmed(t.all.substr(t.number.size()));
  for (const char c : t.unit_as_typed) t.unit += lower(c);
  const std::size_t dot = t.number.find_first_of(".,");
  t.whole = t.number.substr(0, dot);
  if (dot != std::string_view::npos) t.fraction = t.number.substr(dot + 1);
  return t;
}

std::string digits_of(std::string_view number) {
  std::string out;
  for (const char c : number)
    if (is_digit(c)) out += c;
  return out;
}

// "1.024,5" → "1024.5": the last separator is taken for the decimal one when it differs from the others.
std::string without_grouping(std::string_view number) {
  const std::size_t last = number.find_last_of(".,");
  const bool decimal = std::count(number.begin(), number.end(), number[last]) == 1;
  if (!decimal) return digits_of(number);
  return digits_of(number.substr(0, last)) + "." + std::string(number.substr(last + 1));
}

Result<void> check_number(const Typed& t) {
  if (t.all.empty()) return fail(text::size_empty);
  if (t.all.starts_with('-') || t.all.starts_with("\u2212")) return fail(text::size_negative, excerpt(t.all));
  if (digits_of(t.number).empty()) return fail(text::size_number, excerpt(t.all));
  const auto separators = std::count_if(t.number.begin(), t.number.end(), is_separator);
  if (separators > 1) return fail(text::size_separators, excerpt(t.all), excerpt(without_grouping(t.number)));
  if (separators == 1 && (t.whole.empty() || t.fraction.empty()))
    return fail(text::size_fraction_digits, excerpt(t.all));
  if (t.fraction.size() > kMaxFractionDigits)
    return fail(text::size_fraction_long, excerpt(t.all), Count{static_cast<std::int64_t>(t.fraction.size())},
                Count{kMaxFractionDigits});
  if (separators == 1 && t.unit.empty() && t.fraction.size() == 3 && t.whole != "0")
    return fail(text::size_thousand_or_fraction, excerpt(t.all), excerpt(digits_of(t.number)),
                excerpt(digits_of(t.number)) + " MiB", excerpt(t.number));
  if (separators == 1 && t.unit.empty()) return fail(text::size_fraction_unit, excerpt(t.all));
  return {};
}

std::int64_t power_of_ten(std::size_t n) {
  std::int64_t out = 1;
  for (; n > 0; --n) out *= 10;
  return out;
}

std::int64_t integer(std::string_view digits, std::int64_t most) {
  std::int64_t out = 0;
  for (const char c : digits) out = std::min(out * 10 + (c - '0'), most + 1);
  return out;
}

// Whole MiB of the number in units of `unit` MiB; nothing above kMaxMib.
std::optional<std::int64_t> in_mib(const Typed& t, std::int64_t unit) {
  const std::int64_t whole = integer(t.whole, kMaxMib);
  const std::int64_t power = power_of_ten(t.fraction.size());
  const std::int64_t part = (integer(t.fraction, power) * unit + power / 2) / power;
  if (whole > kMaxMib / unit || whole * unit + part > kMaxMib) return std::nullopt;
  return whole * unit + part;
}

// Whole MiB of the number in units of 10^exponent bytes; nothing above kMaxMib.
std::optional<std::int64_t> decimal_in_mib(const Typed& t, std::size_t exponent) {
  const std::int64_t most = kMaxMib * kBytesPerMib;
  const std::int64_t whole = integer(t.whole, most);
  const std::size_t digits = t.fraction.size();
  const std::int64_t fraction = integer(t.fraction, power_of_ten(digits));
  const std::int64_t part = digits <= exponent ? fraction * power_of_ten(exponent - digits)
                                               : fraction / power_of_ten(digits - exponent);
  if (whole > most / power_of_ten(exponent)) return std::nullopt;
  const std::int64_t bytes = whole * power_of_ten(exponent) + part;
  if (bytes > most) return std::nullopt;
  return (bytes + kBytesPerMib / 2) / kBytesPerMib;
}

Result<std::int64_t> refuse_unit(const Typed& t) {
  for (const DecimalUnit& d : kDecimalUnits) {
    if (t.unit != d.word) continue;
    const auto mib = decimal_in_mib(t, d.exponent);
    if (!mib) return fail(text::size_large, excerpt(t.all), Mib{kMaxMib});
    return fail(text::size_power_of_ten, excerpt(t.all), d.shown,
                std::string(t.number) + " " + std::string(d.meant), std::to_string(*mib) + " MiB");
  }
  return fail(text::size_unit, excerpt(t.all), excerpt(t.unit_as_typed));
}

} // namespace

Result<std::int64_t> parse_mib(std::string_view text) {
  const Typed t = split(text);
  if (auto ok = check_number(t); !ok) return fail(std::move(ok.error()));
  if (t.unit.empty()) {
    if (const auto mib = in_mib(t, 1)) return *mib;
    return fail(text::size_large, excerpt(t.all), Mib{kMaxMib});
  }
  for (const Unit& u : kUnits) {
    if (t.unit != u.word) continue;
    if (const auto mib = in_mib(t, u.mib)) return *mib;
    return fail(text::size_large, excerpt(t.all), Mib{kMaxMib});
  }
  return refuse_unit(t);
}

std::string mib_text(std::int64_t mib) {
  assert(mib >= 0 && mib <= kMaxMib);
  std::string whole = std::to_string(mib) + " MiB";
  if (mib < kMibPerGib) return whole;
  std::string gib = std::to_string(mib / kMibPerGib);
  std::int64_t rest = mib % kMibPerGib;
  if (rest != 0) gib += '.';
  for (; rest != 0; rest %= kMibPerGib) {
    rest *= 10;
    gib += static_cast<char>('0' + rest / kMibPerGib);
  }
  gib += " GiB";
  return gib.size() <= whole.size() ? gib : whole;
}

} // namespace snug
