#include "core/document/field_value.h"

#include "core/document/json_walk.h"

namespace snug::detail {

namespace {

template <typename T>
Result<Value> as_value(Result<T> r) {
  if (!r) return fail(std::move(r.error()));
  return Value(std::move(*r));
}

} // namespace

Result<Value> field_value(const FieldInfo& f, Value v) {
  const std::string* s = v.as<std::string>();
  if (!s) return v;
  switch (f.type) {
  case FieldType::date:
    return as_value(parse_date(*s));
  case FieldType::id:
  case FieldType::ids:
    return as_value(parse_id(*s));
  case FieldType::address:
    return as_value(parse_address(*s));
  case FieldType::prefix:
  case FieldType::prefixes:
    return as_value(parse_prefix(*s));
  case FieldType::mac:
    return as_value(parse_mac(*s));
  default:
    return v;
  }
}

Problem number_problem(const FieldInfo& f, std::string_view raw) {
  const bool whole = raw.find_first_of(".eE") == std::string_view::npos;
  if (f.type == FieldType::integer && whole) {
    Problem p = check(f, Value(raw.starts_with('-') ? INT64_MIN : INT64_MAX)).error();
    p.message.args.at(1) = std::string(raw); // the value
    return p;
  }
  // A value of another type has the sentence that names the right one.
  const Value other = f.type == FieldType::integer ? Value(std::string()) : Value(std::int64_t{0});
  return check(f, other).error();
}

std::string compact(std::string_view json) {
  std::string out;
  out.reserve(json.size());
  bool quotes = false;
  for (std::size_t i = 0; i < json.size(); ++i) {
    const char c = json[i];
    if (quotes && c == '\\') {
      out += c;
      out += json[++i];
      continue;
    }
    if (c == '"') quotes = !quotes;
    if (quotes || !is_blank(c)) out += c;
  }
  return out;
}

} // namespace snug::detail
