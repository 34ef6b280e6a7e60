#include "core/document/read_edit.h"

#include "core/base/quote.h"
#include "core/document/lab_reader.h"
#include "core/document/members.h"
#include "core/model/json_text.h"
#include "core/text/journal_text.h"

#include <algorithm>
#include <array>

namespace snug {

namespace {

using detail::Member;

tl::unexpected<Problem> fail_at(Problem p, std::string_view path) {
  p.path = std::string(path) + p.path;
  return fail(std::move(p));
}

// The values of exactly these members, in this order.
template <std::size_t N>
Result<std::array<Member, N>> exactly(const std::vector<Member>& members,
                                      const std::array<std::string_view, N>& keys) {
  std::array<Member, N> out;
  for (const Member& m : members) {
    const auto at = std::find(keys.begin(), keys.end(), m.key);
    if (at == keys.end()) return fail(text::edit_member, excerpt(m.key));
    out[static_cast<std::size_t>(at - keys.begin())] = m;
  }
  for (std::size_t i = 0; i < N; ++i)
    if (out[i].text.empty()) return fail(text::edit_member_missing, keys[i]);
  return out;
}

Result<AnyId> read_id(const Member& m) {
  const auto word = detail::text_in(m);
  const auto id = word ? parse_id(*word) : Result<AnyId>(AnyId{});
  if (!id || !*id || id->kind == Kind::outside || id->kind == Kind::everyone)
    return fail(text::edit_form, m.key, say(text::form_id));
  return *id;
}

// Reads one object as the only thing of its kind in a document.
Result<Lab> read_alone(Kind kind, std::string_view object) {
  const StructInfo& table = info_of(kind);
  std::string document = "{\"";
  (document += table.collection) += table.id ? "\": [" : "\": ";
  (document += object) += table.id ? "]}" : "}";
  Lab lab;
  const char* seen = nullptr;
  detail::LabReader reader(document, seen, lab);
  if (detail::walk(document, seen, reader)) return lab;
  if (reader.fault()) return fail(Problem{reader.fault()->message, {}, 0, 0, {}});
  return fail(text::edit_form, excerpt(object), say(text::form_object));
}

// A default object of the id's kind with some members beside its id.
Result<Lab> read_members(AnyId id, std::string_view members) {
  std::string object = "{";
  if (info_of(id.kind).id) {
    ((object += "\"id\": \"") += to_text(id)) += '"';
    if (!members.empty()) object += ", ";
  }
  (object += members) += '}';
  return read_alone(id.kind, object);
}

Result<Value> read_value(AnyId id, const FieldInfo& field, std::string_view json) {
  std::string member;
  append_json_string(member, field.key);
  const auto lab = read_members(id, (member += ": ") += json);
  if (!lab) return fail(lab.error());
  return field.get(store_of(id.kind).at(*lab, 0));
}

Result<Unknown> read_unknown(AnyId id, const Member& m) {
  const auto members = detail::members_of(m.text);
  if (!members) return fail(members.error());
  const StructInfo& table = info_of(id.kind);
  for (const Member& known : *members)
    if (table.field(known.key) || (table.id && known.key == "id")) return fail(text::edit_known, known.key);
  auto lab = read_members(id, m.text.substr(1, m.text.size() - 2));
  if (!lab) return fail(lab.error());
  return table.unknown(store_of(id.kind).at(*lab, 0));
}

Result<Primitive> read_set(const std::vector<Member>& members) {
  const auto parts = exactly<4>(members, {"set", "field", "before", "after"});
  if (!parts) return fail(parts.error());
  const auto id = read_id((*parts)[0]);
  if (!id) return fail_at(id.error(), "/set");
  const auto key = detail::text_in((*parts)[1]);
  if (!key) return fail_at(key.error(), "/field");
  const FieldInfo* field = info_of(id->kind).field(*key);
  if (!field) return fail_at(Problem{say(text::edit_member, excerpt(*key)), {}, 0, 0, {}}, "/field");
  auto before = read_value(*id, *field, (*parts)[2].text);
  if (!before) return fail_at(std::move(before.error()), "/before");
  auto after = read_value(*id, *field, (*parts)[3].text);
  if (!after) return fail_at(std::move(after.error()), "/after");
  return SetField{*id, field, std::move(*before), std::move(*after)};
}

Result<Primitive> read_set_unknown(const std::vector<Member>& members) {
  const auto parts = exactly<2>(members, {"set", "unknown"});
  if (!parts) return fail(parts.error());
  const auto id = read_id((*parts)[0]);
  if (!id) return fail_at(id.error(), "/set");
  const auto both = detail::members_of((*parts)[1].text);
  if (!both) return fail_at(both.error(), "/unknown");
  const auto sides = exactly<2>(*both, {"before", "after"});
  if (!sides) return fail_at(sides.error(), "/unknown");
  auto before = read_unknown(*id, (*sides)[0]);
  if (!before) return fail_at(std::move(before.error()), "/unknown/before");
  auto after = read_unknown(*id, (*sides)[1]);
  if (!after) return fail_at(std::move(after.error()), "/unknown/after");
  return SetUnknown{*id, std::move(*before), std::move(*after)};
}

// The kind of an element follows from the letter of its id.
Result<std::shared_ptr<const AnyElement>> read_element(std::string_view json) {
  const auto members = detail::members_of(json);
  if (!members) return fail(members.error());
  const auto has_id = [](const Member& m) { return m.key == "id"; };
  const auto at = std::find_if(members->begin(), members->end(), has_id);
  if (at == members->end()) return fail(text::edit_member_missing, "id");
  const auto id = read_id(*at);
  if (!id) return fail(id.error());
  if (!info_of(id->kind).id) return fail(text::edit_form, "id", say(text::form_id));
  const auto lab = read_alone(id->kind, json);
  if (!lab) return fail(lab.error());
  return std::make_shared<const AnyElement>(store_of(id->kind).take(*lab, 0));
}

template <typename Step>
Result<Primitive> read_element_step(const std::vector<Member>& members, std::string_view what) {
  const auto parts = exactly<2>(members, {what, "place"});
  if (!parts) return fail(parts.error());
  auto element = read_element((*parts)[0].text);
  if (!element) return fail_at(std::move(element.error()), "/" + std::string(what));
  const auto place = detail::number_in((*parts)[1]);
  if (!place) return fail_at(place.error(), "/place");
  return Step{static_cast<std::size_t>(*place), std::move(*element)};
}

Result<Primitive> read_step(std::string_view json) {
  const auto members = detail::members_of(json);
  if (!members) return fail(members.error());
  const auto has = [&](std::string_view key) {
    return std::any_of(members->begin(), members->end(), [key](const Member& m) { return m.key == key; });
  };
  if (has("insert")) return read_element_step<InsertElement>(*members, "insert");
  if (has("remove")) return read_element_step<RemoveElement>(*members, "remove");
  return has("unknown") ? read_set_unknown(*members) : read_set(*members);
}

} // namespace

Result<Edit> read_edit(std::string_view json) {
  const auto members = detail::members_of(json);
  if (!members) return fail(members.error());
  const auto parts = exactly<2>(*members, {"label", "edits"});
  if (!parts) return fail(parts.error());
  auto label = detail::text_in((*parts)[0]);
  if (!label) return fail_at(std::move(label.error()), "/label");
  const auto entries = detail::entries_of((*parts)[1].text);
  if (!entries) return fail_at(entries.error(), "/edits");
  if (entries->size() > kMostEditSteps)
    return fail(text::edit_long, Count{static_cast<std::int64_t>(kMostEditSteps)});
  Edit e{say(text::edit_label, std::move(*label)), {}};
  e.steps.reserve(entries->size());
  for (const Member& entry : *entries) {
    auto step = read_step(entry.text);
    if (!step) return fail_at(std::move(step.error()), "/edits/" + std::to_string(e.steps.size()));
    e.steps.push_back(std::move(*step));
  }
  return e;
}

} // namespace snug
