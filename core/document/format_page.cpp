#include "core/document/read.h"
#include "core/document/schema.h"
#include "core/model/field.h"

#include <algorithm>

namespace snug {

namespace {

struct Rows {
  const StructInfo* table;
  std::vector<std::string> used; // "`trunk` of a card"
};

std::string joined(std::span<const std::string_view> words) {
  std::string out;
  for (const std::string_view w : words) out += (out.empty() ? "`" : ", `") + std::string(w) + "`";
  return out;
}

std::string id_words(KindSet set) {
  std::string out;
  for (int k = 1; k < kKindCount; ++k) {
    const Kind kind = static_cast<Kind>(k);
    if ((set & kinds({kind})) == 0) continue;
    const char letter = letter_of(kind);
    const std::string example = letter ? std::string(1, letter) + "1" : to_text(AnyId{kind, 0});
    out += (out.empty() ? "`" : ", `") + example + "`";
  }
  return out;
}

std::string range_words(const FieldInfo& f) {
  std::string out = std::to_string(f.least) + " … " + std::to_string(f.most);
  if (f.unit == Unit::mib) out += " MiB";
  if (f.unit == Unit::seconds) out += " s";
  if (f.unit == Unit::percent) out += " %";
  if (f.unit == Unit::hundredths) out += " hundredths";
  if (f.unit == Unit::octets) out += " octets";
  return out;
}

std::string type_words(const FieldInfo& f) {
  switch (f.type) {
  case FieldType::boolean:
    return "`true`, `false`";
  case FieldType::integer:
    return range_words(f);
  case FieldType::text:
    return "text, at most " + std::to_string(f.max_length) + " octets";
  case FieldType::choice:
    return joined(f.choices);
  case FieldType::date:
    return "date, `\"2027-02-14\"`";
  case FieldType::id:
    return "id: " + id_words(f.id_kinds);
  case FieldType::ids:
    return "list of ids: " + id_words(f.id_kinds);
  case FieldType::address:
    return "address, `\"192.0.2.10\"` or `\"2001:db8::10\"`";
  case FieldType::prefix:
    return "prefix, `\"192.0.2.0/24\"`";
  case FieldType::prefixes:
    return "list of prefixes";
  case FieldType::mac:
    return "MAC address, `\"02:00:5e:00:53:01\"`";
  case FieldType::rows:
    return "list of objects, see below";
  }
  return {};
}

std::string default_words(const FieldInfo& f, const void* blank) {
  std::string text;
  f.write(blank, text);
  if (text == "null") return "not set";
  if (text == "[]") return "empty";
  if (text == "\"\"") return "empty";
  return "`" + text + "`";
}

void append_table(std::string& out, const StructInfo& table) {
  out += "| member | value | if absent | meaning |\n| --- | --- | --- | --- |\n";
  if (table.id) out += "| `id` | id: " + id_words(kinds({table.kind})) + " | needed | never changes |\n";
  for (const FieldInfo& f : table.fields) {
    std::string meaning(f.label);
    if (!f.help.text.empty()) (meaning += ": ") += f.help.text;
    out += "| `" + std::string(f.key) + "` | " + type_words(f) + " | " + default_words(f, table.blank) +
           " | " + meaning + " |\n";
  }
}

void note_rows(std::vector<Rows>& rows, const StructInfo& table) {
  for (const FieldInfo& f : table.fields) {
    if (!f.row) continue;
    auto at = std::find_if(rows.begin(), rows.end(), [&f](const Rows& r) { return r.table == f.row; });
    if (at == rows.end()) at = rows.insert(rows.end(), Rows{f.row, {}});
    at->used.push_back("`" + std::string(f.key) + "` of a " + std::string(table.noun));
  }
}

} // namespace

std::string format_page() {
  std::string out = "# The document of a lab, format version " + std::to_string(kFormatVersion) + "\n\n";
  out += "A `.snuglab` file is one JSON object in UTF-8. It holds `\"format\": \"snuglab\"`, `\"version\": " +
         std::to_string(kFormatVersion) +
         "` and any of the members below, in any order. Every member but an element's `id` may be left out. "
         "Members that are not known are kept and written back. At most 32 MiB, nested at most 64 deep.\n";
  std::vector<Rows> rows;
  for (const Kind kind : kinds_in_document()) {
    const StructInfo& table = info_of(kind);
    out += "\n## `" + std::string(table.collection) + "`: ";
    out += table.id ? "list, at most " + std::to_string(table.max_count) +
                          "; each entry: " + std::string(table.noun)
                    : "object";
    out += "\n\n";
    append_table(out, table);
    note_rows(rows, table);
  }
  for (const Rows& r : rows) {
    out += "\n## Entries of ";
    for (std::size_t i = 0; i < r.used.size(); ++i) out += (i == 0 ? "" : ", ") + r.used[i];
    out += "\n\n";
    append_table(out, *r.table);
  }
  return out;
}

} // namespace snug
