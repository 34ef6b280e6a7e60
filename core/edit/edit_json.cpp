#include "core/edit/edit_json.h"

#include "core/model/json_text.h"

namespace snug {

namespace {

void append(std::string& out, const SetField& s) {
  ((out += "{\"set\": \"") += to_text(s.id)) += "\", \"field\": ";
  append_json_string(out, s.field->key);
  out += ", \"before\": ";
  append_json_value(out, *s.field, s.before);
  out += ", \"after\": ";
  append_json_value(out, *s.field, s.after);
  out += '}';
}

void append(std::string& out, const SetUnknown& s) {
  ((out += "{\"set\": \"") += to_text(s.id)) += "\", \"unknown\": {\"before\": {";
  (out += s.before.members()) += "}, \"after\": {";
  (out += s.after.members()) += "}}}";
}

void append_element(std::string& out, std::string_view what, std::size_t place, const AnyElement& element) {
  ((out += "{\"") += what) += "\": ";
  append_json_object(out, info_of(kind_of(element)), object_of(element));
  ((out += ", \"place\": ") += std::to_string(place)) += '}';
}

void append(std::string& out, const InsertElement& s) { append_element(out, "insert", s.place, *s.element); }
void append(std::string& out, const RemoveElement& s) { append_element(out, "remove", s.place, *s.element); }

} // namespace

void append_steps(std::string& out, const Edit& e) {
  out += '[';
  bool first = true;
  for (const Primitive& p : e.steps) {
    if (!first) out += ", ";
    first = false;
    std::visit([&out](const auto& step) { append(out, step); }, p);
  }
  out += ']';
}

void append_edit(std::string& out, const Edit& e) {
  out += "{\"label\": ";
  append_json_string(out, e.label.empty() ? std::string() : english(e.label));
  out += ", \"edits\": ";
  append_steps(out, e);
  out += '}';
}

} // namespace snug
