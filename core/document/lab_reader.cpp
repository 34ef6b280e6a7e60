#include "core/document/lab_reader.h"

#include "core/base/quote.h"
#include "core/document/field_value.h"
#include "core/model/json_text.h"
#include "core/text/document_text.h"
#include "core/text/model_text.h"

#include <algorithm>
#include <cassert>

namespace snug::detail {

namespace {

constexpr unsigned kIdBit = 63;
constexpr unsigned kFormatBit = 62;
constexpr unsigned kVersionBit = 61;
constexpr std::size_t kUnknownKeysNamed = 10;

// Place of the field in the table, or the table's size. Documents keep the order of the table, so the search
// begins at `first`.
std::size_t find_field(const StructInfo& table, std::string_view key, std::size_t first) {
  const std::size_t n = table.fields.size();
  for (std::size_t i = first; i < n; ++i)
    if (table.fields[i].key == key) return i;
  for (std::size_t i = 0; i < first; ++i)
    if (table.fields[i].key == key) return i;
  return n;
}

std::string id_example(Kind kind) { return std::string(1, letter_of(kind)) + "12"; }

} // namespace

std::string pointer_of(const Reference& r) {
  const StructInfo& table = info_of(r.kind);
  std::string out;
  append_pointer(out, table.collection);
  if (table.id) append_pointer(out, std::size_t{r.element});
  append_pointer(out, r.field->key);
  if (r.item != Reference::kNone) append_pointer(out, std::size_t{r.item});
  if (r.column) append_pointer(out, r.column->key);
  return out;
}

bool LabReader::number_unsigned(nlohmann::json::number_unsigned_t n) {
  if (std::in_range<std::int64_t>(n)) return scalar(Value(static_cast<std::int64_t>(n)), {}, true);
  return scalar(Value(), std::to_string(n), true);
}

bool LabReader::number_float(nlohmann::json::number_float_t, const std::string& raw) {
  return scalar(Value(), raw, true);
}

bool LabReader::parse_error(std::size_t position, const std::string& token,
                            const nlohmann::detail::exception& e) {
  constexpr int kOutOfRange = 406; // a number that no floating point number holds
  syntax_offset_ = std::min(position > 0 ? position - 1 : 0, text_.size());
  syntax_token_ = token;
  number_too_large_ = e.id == kOutOfRange;
  return false;
}

bool LabReader::key(std::string& k) {
  if (unknown_trail_.depth() > 0) {
    if (unknown_trail_.key(k)) return true;
    return refuse_twice(k, pointer() + unknown_trail_.pointer());
  }
  Frame& f = top();
  return f.at == At::document ? document_key(f, k) : field_key(f, k);
}

bool LabReader::document_key(Frame& f, const std::string& k) {
  f.key = k;
  if (k == "format" || k == "version") {
    f.await = Await::header;
    return mark(f, k == "format" ? kFormatBit : kVersionBit, k);
  }
  const auto all = kinds_in_document();
  for (unsigned i = 0; i < all.size(); ++i) {
    if (info_of(all[i]).collection != k) continue;
    f.await = Await::part;
    f.table = &info_of(all[i]);
    return mark(f, i, k);
  }
  return unknown_key(f, k);
}

bool LabReader::field_key(Frame& f, const std::string& k) {
  if (f.table->id && k == "id") {
    f.await = Await::id;
    return mark(f, kIdBit, k);
  }
  const std::size_t i = find_field(*f.table, k, f.next);
  if (i == f.table->fields.size()) return unknown_key(f, k);
  f.next = i + 1;
  f.field = &f.table->fields[i];
  f.await = Await::field;
  return mark(f, static_cast<unsigned>(i), k);
}

bool LabReader::unknown_key(Frame& f, const std::string& k) {
  f.key = k;
  f.await = Await::unknown;
  unknown_from_ = seen_;
  if (!f.unknown_seen.insert(k).second) return refuse_twice(k, pointer());
  ++unknown_count_;
  if (unknown_keys_.size() < kUnknownKeysNamed) unknown_keys_.push_back({k, owner_pointer()});
  return true;
}

bool LabReader::mark(Frame& f, unsigned bit, std::string_view k) {
  const std::uint64_t mask = std::uint64_t{1} << bit;
  if ((f.seen_keys & mask) != 0) return refuse_twice(k, pointer());
  f.seen_keys |= mask;
  return true;
}

bool LabReader::scalar(Value v, std::string_view raw, bool number) {
  if (unknown_trail_.depth() > 0) {
    unknown_trail_.value();
    return true;
  }
  Frame& f = top();
  switch (f.at) {
  case At::start:
    return refuse(say(text::document_not_object), {});
  case At::list:
    ++f.index;
    return refuse(say(text::part_entry, f.table->collection), pointer());
  case At::rows:
    ++f.index;
    return refuse(check(*f.field, Value(false)).error(), pointer());
  case At::values:
    return add_item(f, std::move(v), raw);
  default:
    break;
  }
  switch (f.await) {
  case Await::id:
    return set_id(f, v);
  case Await::field:
    return set_field(f, std::move(v), raw);
  case Await::part:
    return refuse(say(f.table->id ? text::part_list : text::part_object, f.key), pointer());
  case Await::unknown:
    return end_unknown(number);
  default:
    return true; // format and version were judged before
  }
}

bool LabReader::set_id(Frame& f, const Value& v) {
  const std::string* s = v.as<std::string>();
  if (!s) return refuse(say(text::value_type, "id", say(text::type_id)), pointer());
  const auto id = parse_id(*s);
  if (!id) return refuse(id.error(), pointer());
  if (id->kind != f.table->kind)
    return refuse(say(text::id_kind, excerpt(*s), f.table->noun, id_example(f.table->kind)), pointer());
  f.table->set_id(f.object, id->number);
  f.await = Await::nothing;
  return true;
}

bool LabReader::set_field(Frame& f, Value v, std::string_view raw) {
  const FieldInfo& field = *f.field;
  if (!raw.empty()) return refuse(number_problem(field, raw), pointer());
  const auto value = field_value(field, std::move(v));
  if (!value) return refuse(value.error(), pointer());
  if (const auto fits = check(field, *value); !fits) return refuse(fits.error(), pointer());
  if (const AnyId* id = value->as<AnyId>()) refer(field, *id);
  [[maybe_unused]] const bool done = field.set(f.object, *value);
  assert(done && "a value that passed check() can be set");
  f.await = Await::nothing;
  return true;
}

bool LabReader::add_item(Frame& f, Value v, std::string_view raw) {
  ++f.index;
  if (f.index > f.field->max_length)
    return refuse(
        say(text::value_many, f.field->label, Count{static_cast<std::int64_t>(f.field->max_length)}),
        pointer());
  if (!raw.empty()) return refuse(check(*f.field, Value::list({Value()})).error(), pointer());
  auto value = field_value(*f.field, std::move(v));
  if (!value) return refuse(value.error(), pointer());
  if (const AnyId* id = value->as<AnyId>()) refer(*f.field, *id);
  items_.push_back(std::move(*value));
  return true;
}

void LabReader::refer(const FieldInfo& field, AnyId id) {
  Reference r{id, kind_, element_, &field, Reference::kNone, nullptr};
  const Frame& f = top();
  if (f.at == At::values) r.item = f.index - 1;
  if (f.at == At::row) {
    const Frame& rows = frames_[depth_ - 1];
    r.field = rows.field;
    r.item = rows.index - 1;
    r.column = &field;
  }
  references_.push_back(r);
}

bool LabReader::refuse(Message m, std::string pointer) {
  fault_ = Fault{std::move(m), {std::move(pointer)}, std::nullopt};
  return false;
}

bool LabReader::refuse_twice(std::string_view k, std::string pointer) {
  fault_ = Fault{say(text::json_twice, excerpt(k)), {pointer, Part::key, 2}, Spot{pointer, Part::key, 1}};
  return false;
}

std::string LabReader::pointer_to(std::size_t depth) const {
  std::string out;
  for (std::size_t i = 1; i <= depth; ++i) {
    const Frame& f = frames_[i];
    if (f.at == At::list || f.at == At::rows || f.at == At::values) {
      if (f.index > 0) append_pointer(out, std::size_t{f.index - 1});
    } else if (f.await == Await::field) {
      append_pointer(out, f.field->key);
    } else if (f.await == Await::id) {
      append_pointer(out, std::string_view("id"));
    } else if (f.await != Await::nothing) {
      append_pointer(out, f.key);
    }
  }
  return out;
}

std::string LabReader::owner_pointer() const { return pointer_to(depth_ - 1); }

} // namespace snug::detail
