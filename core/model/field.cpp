#include "core/model/field.h"

#include "core/base/quote.h"
#include "core/base/size.h"
#include "core/model/lab.h"
#include "core/text/model_text.h"

#include <array>

namespace snug {

bool operator==(const Value& a, const Value& b) {
  if (a.data_.index() != b.data_.index()) return false;
  if (const ValueList* list = a.as_list()) return *list == *b.as_list();
  if (const RowValue* row = a.as_row()) return *row == *b.as_row();
  return a.data_ == b.data_;
}

const FieldInfo* StructInfo::field(std::string_view key) const {
  for (const FieldInfo& f : fields)
    if (f.key == key) return &f;
  return nullptr;
}

const StructInfo& info_of(Kind kind) {
  switch (kind) {
  case Kind::lab:
    return info<LabFacts>();
  case Kind::pc:
    return info<Pc>();
  case Kind::numbering:
    return info<Numbering>();
  case Kind::rules:
    return info<Rules>();
  case Kind::volume:
    return info<Volume>();
  case Kind::lan:
    return info<Lan>();
  case Kind::place:
    return info<Place>();
  case Kind::role:
    return info<Role>();
  case Kind::segment:
    return info<Segment>();
  case Kind::machine:
    return info<Machine>();
  case Kind::card:
    return info<Card>();
  case Kind::disk:
    return info<Disk>();
  case Kind::share:
    return info<Share>();
  case Kind::exercise:
    return info<Exercise>();
  case Kind::promise:
    return info<Promise>();
  default:
    return info<Accepted>();
  }
}

std::span<const Kind> kinds_in_document() {
  static constexpr std::array kKinds{Kind::lab,     Kind::pc,       Kind::numbering, Kind::rules,
                                     Kind::volume,  Kind::lan,      Kind::place,     Kind::role,
                                     Kind::segment, Kind::machine,  Kind::card,      Kind::disk,
                                     Kind::share,   Kind::exercise, Kind::promise,   Kind::accepted};
  return kKinds;
}

namespace {

const Template& type_words(FieldType type) {
  switch (type) {
  case FieldType::boolean:
    return text::type_boolean;
  case FieldType::integer:
    return text::type_integer;
  case FieldType::text:
  case FieldType::choice:
    return text::type_text;
  case FieldType::date:
    return text::type_date;
  case FieldType::id:
    return text::type_id;
  case FieldType::ids:
    return text::type_ids;
  case FieldType::address:
    return text::type_address;
  case FieldType::prefix:
    return text::type_prefix;
  case FieldType::prefixes:
    return text::type_prefixes;
  case FieldType::mac:
    return text::type_mac;
  case FieldType::rows:
    return text::type_rows;
  }
  return text::type_text;
}

tl::unexpected<Problem> wrong_type(const FieldInfo& f) {
  return fail(text::value_type, f.label, say(type_words(f.type)));
}

std::string with_article(std::string_view noun) {
  return (std::string_view("aeio").find(noun[0]) == std::string_view::npos ? "a " : "an ") +
         std::string(noun);
}

std::string kind_nouns(KindSet set) {
  std::vector<std::string> nouns;
  for (const Kind k : kinds_in_document())
    if ((set & kinds({k})) != 0) nouns.push_back(with_article(info_of(k).noun));
  for (const Kind k : {Kind::outside, Kind::everyone})
    if ((set & kinds({k})) != 0) nouns.push_back(to_text(AnyId{k, 0}));
  std::string out;
  for (std::size_t i = 0; i < nouns.size(); ++i)
    out += (i == 0 ? "" : i + 1 == nouns.size() ? " or " : ", ") + nouns[i];
  return out;
}

Result<void> check_id(const FieldInfo& f, const Value& v) {
  const AnyId* id = v.as<AnyId>();
  if (!id) return wrong_type(f);
  if ((f.id_kinds & kinds({id->kind})) == 0)
    return fail(text::value_kind, f.label, to_text(*id), kind_nouns(f.id_kinds));
  return {};
}

Result<void> check_row(const FieldInfo& f, const Value& v) {
  const RowValue* row = v.as_row();
  if (!row || row->fields.size() != f.row->fields.size()) return wrong_type(f);
  for (std::size_t i = 0; i < row->fields.size(); ++i)
    if (auto r = check(f.row->fields[i], row->fields[i]); !r) return r;
  return {};
}

Result<void> check_list(const FieldInfo& f, const Value& v) {
  const ValueList* list = v.as_list();
  if (!list) return wrong_type(f);
  if (list->size() > f.max_length)
    return fail(text::value_many, f.label, Count{static_cast<std::int64_t>(f.max_length)});
  for (const Value& item : *list) {
    if (f.type == FieldType::ids) {
      if (auto r = check_id(f, item); !r) return r;
    } else if (f.type == FieldType::prefixes) {
      if (!item.as<Prefix>()) return wrong_type(f);
    } else if (auto r = check_row(f, item); !r) {
      return r;
    }
  }
  return {};
}

std::string with_unit(const FieldInfo& f, std::int64_t n) {
  if (f.unit == Unit::mib) return english(Argument(Mib{n}));
  if (f.unit == Unit::percent) return english(Argument(Percent{n}));
  if (f.unit == Unit::hundredths) return english(Argument(Hundredths{n}));
  if (f.unit == Unit::seconds) return english(Argument(Seconds{n}));
  return std::to_string(n);
}

// Without rounding, so that a value just outside a range does not look like its border.
std::string exactly(const FieldInfo& f, std::int64_t n) {
  if (f.unit != Unit::mib) return with_unit(f, n);
  return n >= 0 && n <= kMaxMib ? mib_text(n) : std::to_string(n) + " MiB";
}

Result<void> check_integer(const FieldInfo& f, const Value& v) {
  const std::int64_t* n = v.as<std::int64_t>();
  if (!n) return wrong_type(f);
  if (*n < f.least || *n > f.most)
    return fail(text::value_range, f.label, exactly(f, *n), exactly(f, f.least), exactly(f, f.most));
  return {};
}

// Controls but tab and line feed, and noncharacters: no output may hold them (RELIABILITY row 22).
bool is_forbidden(char32_t c) {
  if (c < 0x20) return c != '\t' && c != '\n';
  return (c >= 0x7f && c <= 0x9f) || (c >= 0xfdd0 && c <= 0xfdef) || (c & 0xfffeU) == 0xfffe;
}

Result<void> check_characters(const FieldInfo& f, std::string_view s) {
  for (std::size_t i = 0; i < s.size();) {
    const auto octet = static_cast<unsigned char>(s[i]);
    if (octet >= 0x20 && octet < 0x7f) {
      ++i;
      continue;
    }
    const CodePoint c = code_point_at(s, i);
    if (!c.valid) return fail(text::value_utf8, f.label);
    if (is_forbidden(c.value)) return fail(text::value_character, f.label, quoted_character(s, i));
    i += c.length;
  }
  return {};
}

Result<void> check_text(const FieldInfo& f, const Value& v) {
  const std::string* s = v.as<std::string>();
  if (!s) return wrong_type(f);
  if (f.type == FieldType::choice) {
    std::vector<std::string> words(f.choices.begin(), f.choices.end());
    for (const std::string& w : words)
      if (w == *s) return {};
    std::string list;
    for (const std::string& w : words) list += (list.empty() ? "" : ", ") + w;
    return fail(text::value_choice, f.label, *s, list);
  }
  if (s->size() > f.max_length)
    return fail(text::value_long, f.label, Count{static_cast<std::int64_t>(f.max_length)});
  return check_characters(f, *s);
}

template <typename T>
Result<void> check_family(const FieldInfo& f, const Value& v, const T* address) {
  if (!address) return wrong_type(f);
  if (!f.family || address->family() == *f.family) return {};
  return fail(text::value_family, f.label, show(f, v), *f.family == Family::v4 ? "IPv4" : "IPv6");
}

} // namespace

Result<void> check(const FieldInfo& f, const Value& v) {
  if (!v.is_set()) {
    if (f.optional) return {};
    return fail(text::value_unset, f.label);
  }
  bool right = true;
  switch (f.type) {
  case FieldType::boolean:
    right = v.as<bool>() != nullptr;
    break;
  case FieldType::integer:
    return check_integer(f, v);
  case FieldType::text:
  case FieldType::choice:
    return check_text(f, v);
  case FieldType::date:
    right = v.as<Date>() != nullptr;
    break;
  case FieldType::id:
    return check_id(f, v);
  case FieldType::ids:
  case FieldType::prefixes:
  case FieldType::rows:
    return check_list(f, v);
  case FieldType::address:
    return check_family(f, v, v.as<Address>());
  case FieldType::prefix:
    return check_family(f, v, v.as<Prefix>());
  case FieldType::mac:
    right = v.as<Mac>() != nullptr;
    break;
  }
  if (!right) return wrong_type(f);
  return {};
}

std::string show(const FieldInfo& f, const Value& v) {
  if (!v.is_set()) return "not set";
  if (const auto* b = v.as<bool>()) return *b ? "yes" : "no";
  if (const auto* n = v.as<std::int64_t>()) return with_unit(f, *n);
  if (const auto* s = v.as<std::string>()) return *s;
  if (const auto* id = v.as<AnyId>()) return to_text(*id);
  if (const auto* a = v.as<Address>()) return to_text(*a);
  if (const auto* p = v.as<Prefix>()) return to_text(*p);
  if (const auto* m = v.as<Mac>()) return to_text(*m);
  if (const auto* d = v.as<Date>()) return to_text(*d);
  std::string out;
  if (const ValueList* list = v.as_list()) {
    for (const Value& item : *list) out += (out.empty() ? "" : ", ") + show(f, item);
    return out.empty() ? "none" : out;
  }
  const RowValue* row = v.as_row();
  const auto columns = f.row->fields;
  for (std::size_t i = 0; i < columns.size() && i < row->fields.size(); ++i)
    if (row->fields[i].is_set()) out += (out.empty() ? "" : " ") + show(columns[i], row->fields[i]);
  return out;
}

} // namespace snug
