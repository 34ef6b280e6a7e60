#include "core/model/json_text.h"

#include <array>

namespace snug {

namespace {

// Length of the well-formed UTF-8 sequence at s[i] (RFC 3629), or 0.
std::size_t sequence_length(std::string_view s, std::size_t i) {
  const auto byte = [&s](std::size_t k) { return k < s.size() ? static_cast<unsigned char>(s[k]) : 0U; };
  const auto tail = [&byte](std::size_t k, unsigned lo = 0x80, unsigned hi = 0xBF) {
    return byte(k) >= lo && byte(k) <= hi;
  };
  const unsigned b = byte(i);
  if (b < 0x80) return 1;
  if (b >= 0xC2 && b <= 0xDF) return tail(i + 1) ? 2 : 0;
  if (b >= 0xE0 && b <= 0xEF) {
    const unsigned lo = b == 0xE0 ? 0xA0 : 0x80;
    const unsigned hi = b == 0xED ? 0x9F : 0xBF;
    return tail(i + 1, lo, hi) && tail(i + 2) ? 3 : 0;
  }
  if (b >= 0xF0 && b <= 0xF4) {
    const unsigned lo = b == 0xF0 ? 0x90 : 0x80;
    const unsigned hi = b == 0xF4 ? 0x8F : 0xBF;
    return tail(i + 1, lo, hi) && tail(i + 2) && tail(i + 3) ? 4 : 0;
  }
  return 0;
}

void append_escape(std::string& out, char c) {
  constexpr std::string_view kHex = "0123456789abcdef";
  switch (c) {
  case '"':
    out += "\\\"";
    return;
  case '\\':
    out += "\\\\";
    return;
  case '\n':
    out += "\\n";
    return;
  case '\t':
    out += "\\t";
    return;
  case '\r':
    out += "\\r";
    return;
  case '\b':
    out += "\\b";
    return;
  case '\f':
    out += "\\f";
    return;
  default:
    break;
  }
  const auto u = static_cast<unsigned char>(c);
  out += "\\u00";
  out += kHex[u >> 4U];
  out += kHex[u & 15U];
}

} // namespace

void append_json_string(std::string& out, std::string_view s) {
  out += '"';
  std::size_t plain = 0;
  std::size_t i = 0;
  while (i < s.size()) {
    const auto u = static_cast<unsigned char>(s[i]);
    if (u >= 0x20 && u < 0x80 && u != '"' && u != '\\' && u != 0x7F) {
      ++i;
      continue;
    }
    const std::size_t n = u < 0x80 ? 1 : sequence_length(s, i);
    if (u >= 0x80 && n > 0) {
      i += n;
      continue;
    }
    out.append(s, plain, i - plain);
    if (n == 0) {
      out += "\xEF\xBF\xBD";
    } else {
      append_escape(out, s[i]);
    }
    plain = ++i;
  }
  out.append(s, plain, std::string_view::npos);
  out += '"';
}

void append_json_object(std::string& out, const StructInfo& table, const void* object) {
  out += '{';
  bool first = true;
  const auto comma = [&] {
    if (!first) out += ", ";
    first = false;
  };
  if (table.id) {
    comma();
    ((out += "\"id\": \"") += to_text(table.id(object))) += '"';
  }
  for (const FieldInfo& f : table.fields) {
    if (f.is_default(object)) continue;
    comma();
    ((out += '"') += f.key) += "\": ";
    f.write(object, out);
  }
  const Unknown& unknown =
      table.unknown(const_cast<void*>(object)); // NOLINT(cppcoreguidelines-pro-type-const-cast)
  if (!unknown.empty()) {
    comma();
    out += unknown.members();
  }
  out += '}';
}

namespace {

void append_json_row(std::string& out, const StructInfo& table, const RowValue& row) {
  out += '{';
  bool first = true;
  for (std::size_t i = 0; i < table.fields.size() && i < row.fields.size(); ++i) {
    const FieldInfo& f = table.fields[i];
    if (row.fields[i] == f.get(table.blank)) continue;
    if (!first) out += ", ";
    first = false;
    ((out += '"') += f.key) += "\": ";
    append_json_value(out, f, row.fields[i]);
  }
  if (!row.unknown.empty()) (out += first ? "" : ", ") += row.unknown.members();
  out += '}';
}

} // namespace

void append_json_value(std::string& out, const FieldInfo& field, const Value& value) {
  if (!value.is_set()) {
    out += "null";
  } else if (const auto* flag = value.as<bool>()) {
    out += *flag ? "true" : "false";
  } else if (const auto* number = value.as<std::int64_t>()) {
    out += std::to_string(*number);
  } else if (const RowValue* row = value.as_row()) {
    append_json_row(out, *field.row, *row);
  } else if (const ValueList* list = value.as_list()) {
    out += '[';
    for (std::size_t i = 0; i < list->size(); ++i) {
      if (i > 0) out += ", ";
      append_json_value(out, field, (*list)[i]);
    }
    out += ']';
  } else {
    append_json_string(out, show(field, value));
  }
}

} // namespace snug
