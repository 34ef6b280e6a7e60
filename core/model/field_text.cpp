#include "core/model/field_text.h"

#include "core/base/quote.h"
#include "core/base/size.h"
#include "core/model/basics.h"
#include "core/text/model_text.h"

#include <algorithm>
#include <charconv>

namespace snug {

namespace {

constexpr std::int64_t kHundred = 100;

std::string hundredths(std::int64_t n) {
  std::string out = std::to_string(n / kHundred);
  if (n % kHundred == 0) return out;
  out += '.';
  out += static_cast<char>('0' + n % kHundred / 10);
  if (n % 10 != 0) out += static_cast<char>('0' + n % 10);
  return out;
}

// A port that may be left out: its help says what 0 is.
bool may_be_any(const FieldInfo& f) { return f.unit == Unit::port && f.help.text.starts_with('0'); }

std::string number_text(const FieldInfo& f, std::int64_t n) {
  if (n == 0 && may_be_any(f)) return english(say(text::line_any));
  switch (f.unit) {
  case Unit::mib:
    return n >= 0 ? mib_text(n) : std::to_string(n);
  case Unit::hundredths:
    return hundredths(n);
  default:
    return std::to_string(n);
  }
}

Result<Value> whole_number(const FieldInfo& f, std::string_view text) {
  std::int64_t n = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), n);
  if (error != std::errc() || end != text.data() + text.size()) return fail(text::line_number, f.label, text);
  return Value(n);
}

Result<Value> hundredths_of(const FieldInfo& f, std::string_view text) {
  const std::size_t point = text.find_first_of(".,");
  std::string digits(text.substr(0, point));
  std::string_view rest = point == std::string_view::npos ? std::string_view{} : text.substr(point + 1);
  if (rest.size() > 2 || (point != std::string_view::npos && rest.empty()) || digits.empty())
    return fail(text::line_decimal, f.label, text);
  digits += rest;
  digits.append(2 - rest.size(), '0');
  if (digits.find_first_not_of("0123456789") != std::string::npos)
    return fail(text::line_decimal, f.label, text);
  return whole_number(f, digits);
}

Result<Value> number_of(const FieldInfo& f, std::string_view text) {
  if (may_be_any(f) && text == text::line_any.other) return Value(std::int64_t{0});
  if (f.unit == Unit::mib) {
    const auto mib = parse_mib(text);
    if (!mib) return fail(mib.error());
    return Value(*mib);
  }
  if (f.unit == Unit::hundredths) return hundredths_of(f, text);
  if (f.unit == Unit::percent && text.ends_with('%')) text = trimmed(text.substr(0, text.size() - 1));
  return whole_number(f, text);
}

template <typename T>
Result<Value> wrapped(Result<T> parsed) {
  if (!parsed) return fail(parsed.error());
  return Value(std::move(*parsed));
}

Result<Value> parsed(const FieldInfo& f, std::string_view text) {
  switch (f.type) {
  case FieldType::boolean:
    if (text == "yes" || text == "no") return Value(text == "yes");
    return fail(text::line_yes_no, f.label, text);
  case FieldType::integer:
    return number_of(f, text);
  case FieldType::date:
    return wrapped(parse_date(text));
  case FieldType::id:
    return wrapped(parse_id(text));
  case FieldType::address:
    return wrapped(parse_address(text));
  case FieldType::prefix:
    return wrapped(parse_prefix(text));
  case FieldType::mac:
    return wrapped(parse_mac(text));
  default:
    return Value(std::string(text));
  }
}

} // namespace

bool is_one_line(const FieldInfo& f) {
  return f.type != FieldType::ids && f.type != FieldType::prefixes && f.type != FieldType::rows;
}

std::string line_of(const FieldInfo& f, const Value& v) {
  if (!v.is_set()) return {};
  const auto* n = v.as<std::int64_t>();
  return n ? number_text(f, *n) : show(f, v);
}

Result<Value> value_of_line(const FieldInfo& f, std::string_view line) {
  const std::string_view text = f.type == FieldType::text ? line : trimmed(line);
  if (text.empty() && f.type != FieldType::text) {
    if (f.optional || f.type == FieldType::id) return Value();
    return fail(text::value_unset, f.label);
  }
  auto value = parsed(f, text);
  if (!value) return value;
  if (const auto ok = check(f, *value); !ok) return fail(ok.error());
  return value;
}

std::optional<Message> echo_of_line(const FieldInfo& f, std::string_view line) {
  if (f.unit != Unit::mib) return {};
  const std::string_view typed = trimmed(line);
  const auto value = value_of_line(f, typed);
  const auto* mib = value ? value->as<std::int64_t>() : nullptr;
  if (!mib || typed == mib_text(*mib)) return {};
  const bool bare = std::all_of(typed.begin(), typed.end(), is_digit);
  if (!bare || *mib == 0 || *mib >= kMibPerGib) return say(text::line_size, mib_text(*mib));
  return say(text::line_size_bare, mib_text(*mib), mib_text(*mib * kMibPerGib), std::to_string(*mib) + "g");
}

std::optional<Message> bare_size(const FieldInfo& f, std::string_view line) {
  auto echo = echo_of_line(f, line);
  if (!echo || echo->text != &text::line_size_bare) return {};
  return say(text::line_size_taken, echo->args[0], echo->args[1], echo->args[2]);
}

} // namespace snug
