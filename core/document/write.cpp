#include "core/document/write.h"

#include "core/document/read.h"
#include "core/model/json_text.h"
#include "core/model/store.h"

namespace snug {

namespace {

void next_member(std::string& out, std::string_view indent, bool& first) {
  out += first ? "\n" : ",\n";
  out += indent;
  first = false;
}

void append_singleton(std::string& out, const StructInfo& table, const void* object) {
  const Unknown& unknown =
      table.unknown(const_cast<void*>(object)); // NOLINT(cppcoreguidelines-pro-type-const-cast)
  bool first = true;
  const std::size_t before = out.size();
  ((out += ",\n  \"") += table.collection) += "\": {";
  for (const FieldInfo& f : table.fields) {
    if (f.is_default(object)) continue;
    next_member(out, "    ", first);
    ((out += '"') += f.key) += "\": ";
    f.write(object, out);
  }
  if (!unknown.empty()) {
    next_member(out, "    ", first);
    out += unknown.members();
  }
  if (first) {
    out.resize(before);
  } else {
    out += "\n  }";
  }
}

void append_list(std::string& out, const Lab& lab, const Store& store) {
  const std::size_t count = store.count(lab);
  if (count == 0) return;
  ((out += ",\n  \"") += store.table->collection) += "\": [";
  bool first = true;
  for (std::size_t i = 0; i < count; ++i) {
    next_member(out, "    ", first);
    append_json_object(out, *store.table, store.at(lab, i));
  }
  out += "\n  ]";
}

} // namespace

std::string write_lab(const Lab& lab) {
  std::string out;
  constexpr std::size_t kOctetsPerElement = 160;
  std::size_t elements = 16;
  for (const Kind kind : kinds_in_document()) elements += store_of(kind).count(lab);
  out.reserve(elements * kOctetsPerElement);
  out += "{\n  \"format\": \"snuglab\",\n  \"version\": ";
  out += std::to_string(kFormatVersion);
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    if (store.insert) {
      append_list(out, lab, store);
    } else {
      append_singleton(out, *store.table, store.at(lab, 0));
    }
  }
  if (!lab.unknown.empty()) (out += ",\n  ") += lab.unknown.members();
  out += "\n}\n";
  return out;
}

} // namespace snug
