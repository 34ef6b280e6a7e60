#include "core/document/schema.h"

#include "core/document/read.h"
#include "core/model/field.h"

#include <nlohmann/json.hpp>

namespace snug {

namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kDigits = "[1-9][0-9]{0,8}";

std::string id_pattern(KindSet set) {
  std::string letters;
  std::string words;
  for (int k = 1; k < kKindCount; ++k) {
    const Kind kind = static_cast<Kind>(k);
    if ((set & kinds({kind})) == 0) continue;
    if (const char letter = letter_of(kind)) {
      letters += letter;
    } else {
      words += "|" + to_text(AnyId{kind, 0});
    }
  }
  const std::string ids = letters.empty() ? "" : "[" + letters + "]" + kDigits;
  return "^(" + (ids.empty() ? words.substr(1) : ids + words) + ")$";
}

Json text_form(const char* pattern) { return {{"type", "string"}, {"pattern", pattern}}; }

constexpr const char* kAddress = R"(^[0-9A-Fa-f:]*(:|\.)[0-9A-Fa-f:.]*$)";
constexpr const char* kPrefix = R"(^[0-9A-Fa-f:.]+/[0-9]{1,3}$)";
constexpr const char* kMac =
    R"(^([0-9A-Fa-f]{2}([:-]?)[0-9A-Fa-f]{2}(\2[0-9A-Fa-f]{2}){4}|([0-9A-Fa-f]{4}\.){2}[0-9A-Fa-f]{4})$)";
constexpr const char* kDate = "^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$";

Json object_schema(const StructInfo& table);

Json list_schema(std::size_t most, Json items) {
  return {{"type", "array"}, {"maxItems", most}, {"items", std::move(items)}};
}

Json type_schema(const FieldInfo& f) {
  switch (f.type) {
  case FieldType::boolean:
    return {{"type", "boolean"}};
  case FieldType::integer:
    return {{"type", "integer"}, {"minimum", f.least}, {"maximum", f.most}};
  case FieldType::text:
    return {{"type", "string"}, {"maxLength", f.max_length}};
  case FieldType::choice:
    return {{"type", "string"}, {"enum", f.choices}};
  case FieldType::date:
    return text_form(kDate);
  case FieldType::id:
    return text_form(id_pattern(f.id_kinds).c_str());
  case FieldType::ids:
    return list_schema(f.max_length, text_form(id_pattern(f.id_kinds).c_str()));
  case FieldType::address:
    return text_form(kAddress);
  case FieldType::prefix:
    return text_form(kPrefix);
  case FieldType::prefixes:
    return list_schema(f.max_length, text_form(kPrefix));
  case FieldType::mac:
    return text_form(kMac);
  case FieldType::rows:
    return list_schema(f.max_length, object_schema(*f.row));
  }
  return {};
}

std::string unit_words(const FieldInfo& f) {
  switch (f.unit) {
  case Unit::mib:
    return " (MiB)";
  case Unit::seconds:
    return " (seconds)";
  case Unit::percent:
    return " (%)";
  case Unit::hundredths:
    return " (hundredths)";
  case Unit::octets:
    return " (octets)";
  default:
    return "";
  }
}

Json field_schema(const FieldInfo& f, const void* blank) {
  Json out = type_schema(f);
  if (f.optional) {
    out["type"] = Json::array({out["type"], "null"});
    if (out.contains("enum")) out["enum"].push_back(nullptr);
  }
  std::string text;
  f.write(blank, text);
  const Json usual = Json::parse(text);
  if (!usual.is_null() && !usual.is_array()) out["default"] = usual;
  std::string words = std::string(f.label) + unit_words(f);
  if (!f.help.text.empty()) (words += ": ") += f.help.text;
  out["description"] = words;
  return out;
}

Json object_schema(const StructInfo& table) {
  Json properties = Json::object();
  if (table.id) {
    properties["id"] = text_form(id_pattern(kinds({table.kind})).c_str());
    properties["id"]["description"] = "never changes; references name it";
  }
  for (const FieldInfo& f : table.fields) properties[std::string(f.key)] = field_schema(f, table.blank);
  Json out = {{"type", "object"}};
  if (table.id) out["required"] = Json::array({"id"});
  out["properties"] = std::move(properties);
  return out;
}

} // namespace

std::string json_schema() {
  Json properties = {{"format", {{"const", "snuglab"}}}, {"version", {{"const", kFormatVersion}}}};
  Json definitions = Json::object();
  for (const Kind kind : kinds_in_document()) {
    const StructInfo& table = info_of(kind);
    const std::string key(table.collection);
    const Json reference = {{"$ref", "#/$defs/" + key}};
    properties[key] = table.id ? list_schema(table.max_count, reference) : reference;
    definitions[key] = object_schema(table);
  }
  const Json schema = {
      {"$schema", "https://json-schema.org/draft/2020-12/schema"},
      {"$id", "urn:snuglab:document:" + std::to_string(kFormatVersion)},
      {"title", "Snuglab lab, format version " + std::to_string(kFormatVersion)},
      {"description",
       "Every member but the required ones may be left out and then has its default. Members that "
       "are not named here are kept. At most 32 MiB of UTF-8, nested at most 64 deep."},
      {"type", "object"},
      {"required", Json::array({"format", "version"})},
      {"properties", std::move(properties)},
      {"$defs", std::move(definitions)}};
  return schema.dump(2) + "\n";
}

} // namespace snug
