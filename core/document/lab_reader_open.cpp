// LabReader: objects and lists that open and close.

#include "core/document/field_value.h"
#include "core/document/lab_reader.h"
#include "core/model/json_text.h"
#include "core/text/document_text.h"
#include "core/text/model_text.h"

#include <cassert>

namespace snug::detail {

bool LabReader::start_object(std::size_t) { return open(false); }
bool LabReader::start_array(std::size_t) { return open(true); }
bool LabReader::end_object() { return close(); }
bool LabReader::end_array() { return close(); }

LabReader::Frame& LabReader::push(At at, const StructInfo* table, void* object) {
  Frame& f = frames_.at(++depth_);
  f.at = at;
  f.await = Await::nothing;
  f.table = table;
  f.object = object;
  f.next = 0;
  f.seen_keys = 0;
  f.index = 0;
  f.unknown.clear();
  if (!f.unknown_seen.empty()) f.unknown_seen.clear();
  return f;
}

bool LabReader::open(bool list) {
  if (unknown_trail_.depth() > 0) return open_unknown(list);
  Frame& f = top();
  switch (f.at) {
  case At::start:
    if (list) return refuse(say(text::document_not_object), {});
    push(At::document, nullptr, nullptr);
    return true;
  case At::list:
  case At::rows:
    return open_entry(f, list);
  case At::values:
    ++f.index;
    return refuse(check(*f.field, Value::list({Value()})).error(), pointer());
  default:
    break;
  }
  switch (f.await) {
  case Await::part:
    return open_part(f, list);
  case Await::field:
    return open_field(f, list);
  case Await::unknown:
    return open_unknown(list);
  case Await::id:
    return set_id(f, Value());
  default:
    return refuse(say(text::document_other_format, f.key), pointer());
  }
}

bool LabReader::open_unknown(bool list) {
  unknown_trail_.value();
  if (depth_ + unknown_trail_.depth() >= kMostDepth)
    return refuse(say(text::json_deep, Count{kMostDepth}), pointer() + unknown_trail_.pointer());
  unknown_trail_.open(list);
  return true;
}

bool LabReader::open_part(Frame& f, bool list) {
  if (list != (f.table->id != nullptr))
    return refuse(say(list ? text::part_object : text::part_list, f.key), pointer());
  kind_ = f.table->kind;
  element_ = 0;
  if (list) {
    push(At::list, f.table, nullptr);
  } else {
    push(At::singleton, f.table, store_of(kind_).at(lab_, 0));
  }
  return true;
}

bool LabReader::open_field(Frame& f, bool list) {
  const FieldInfo& field = *f.field;
  const bool rows = field.type == FieldType::rows;
  const bool values = field.type == FieldType::ids || field.type == FieldType::prefixes;
  if (!list || (!rows && !values)) {
    const Value wrong = rows || values ? Value(false) : Value::list({});
    return refuse(check(field, wrong).error(), pointer());
  }
  items_.clear();
  void* object = f.object;
  push(rows ? At::rows : At::values, field.row, object).field = &field;
  return true;
}

bool LabReader::open_entry(Frame& f, bool list) {
  ++f.index;
  const std::size_t most = f.at == At::list ? f.table->max_count : f.field->max_length;
  if (f.index > most) {
    const Count n{static_cast<std::int64_t>(most)};
    return refuse(f.at == At::list ? say(text::part_many, n, f.table->collection)
                                   : say(text::value_many, f.field->label, n),
                  pointer());
  }
  if (list)
    return refuse(f.at == At::list ? say(text::part_entry, f.table->collection)
                                   : check(*f.field, Value(false)).error().message,
                  pointer());
  if (f.at == At::list) {
    element_ = f.index - 1;
    push(At::element, f.table, store_of(f.table->kind).append(lab_));
  } else {
    push(At::row, f.table, f.field->append_row(f.object));
  }
  return true;
}

bool LabReader::close() {
  if (unknown_trail_.depth() > 0) {
    unknown_trail_.close();
    return unknown_trail_.depth() > 0 || end_unknown(false);
  }
  Frame& f = top();
  if (f.at == At::values && !close_values(f)) return false;
  if (f.at == At::element && f.table->id(f.object).number == 0)
    return refuse(say(text::id_missing, f.table->noun, std::string(1, letter_of(f.table->kind)) + "12"),
                  owner_pointer());
  if (!f.unknown.empty()) keep_unknown(f);
  --depth_;
  top().await = Await::nothing;
  return true;
}

bool LabReader::close_values(Frame& f) {
  const Value list = Value::list(std::move(items_));
  items_ = {};
  if (auto fits = check(*f.field, list); !fits) {
    f.index = 0;
    for (const Value& item : *list.as_list()) {
      ++f.index;
      if (!check(*f.field, Value::list({item}))) break;
    }
    return refuse(fits.error(), pointer());
  }
  [[maybe_unused]] const bool done = f.field->set(f.object, list);
  assert(done && "a value that passed check() can be set");
  return true;
}

bool LabReader::end_unknown(bool number) {
  const char* end = number ? end_of_number(text_, seen_) : seen_;
  const char* from = unknown_from_;
  while (is_blank(*from) || *from == ':') ++from;
  Frame& f = top();
  if (!f.unknown.empty()) f.unknown += ',';
  append_json_string(f.unknown, f.key);
  f.unknown += ':';
  f.unknown += compact(std::string_view(from, static_cast<std::size_t>(end - from)));
  f.await = Await::nothing;
  return true;
}

void LabReader::keep_unknown(Frame& f) {
  Unknown& place = f.at == At::document ? lab_.unknown : f.table->unknown(f.object);
  place = Unknown(std::move(f.unknown));
  f.unknown = {};
}

} // namespace snug::detail
