#include "core/edit/build.h"

#include "core/text/model_text.h"

#include <algorithm>
#include <cassert>

namespace snug {

void EditBuilder::step(Primitive p) {
  Edit one{{}, {std::move(p)}};
  // Built on a copy, where references may dangle between steps: only what apply() checks at the end is
  // skipped here.
  std::visit(
      [this](const auto& s) {
        using S = std::decay_t<decltype(s)>;
        if constexpr (std::is_same_v<S, SetField>) {
          s.field->set(object_at(lab_, s.id), s.after);
        } else if constexpr (std::is_same_v<S, SetUnknown>) {
          info_of(s.id.kind).unknown(object_at(lab_, s.id)) = s.after;
        } else if constexpr (std::is_same_v<S, InsertElement>) {
          store_of(kind_of(*s.element)).insert(lab_, s.place, *s.element);
        } else {
          store_of(kind_of(*s.element)).erase(lab_, s.place);
        }
      },
      one.steps.front());
  steps_.push_back(std::move(one.steps.front()));
}

void EditBuilder::set(AnyId id, std::string_view key, Value value) {
  const void* object = object_at(std::as_const(lab_), id);
  assert(object && "no such element");
  const FieldInfo* field = info_of(id.kind).field(key);
  assert(field && "no such field");
  Value before = field->get(object);
  if (before == value) return;
  step(SetField{id, field, std::move(before), std::move(value)});
}

AnyId EditBuilder::add_element(AnyElement e, std::optional<std::size_t> place) {
  const Kind kind = kind_of(e);
  const Store& store = store_of(kind);
  const std::uint32_t number = lab_.facts.next_id;
  set(AnyId{Kind::lab, 0}, "next_id", static_cast<std::int64_t>(number) + 1);
  store.table->set_id(object_of(e), number);
  step(InsertElement{place.value_or(store.count(lab_)), std::make_shared<const AnyElement>(std::move(e))});
  return AnyId{kind, number};
}

namespace {

// `value` without `gone`. `kills` is set when the reference is one its owner cannot be without.
Value without(const FieldInfo& field, const Value& value, AnyId gone, bool& kills) {
  if (const AnyId* id = value.as<AnyId>()) {
    if (*id != gone) return value;
    kills = kills || field.on_removal == OnRemoval::follow;
    return {};
  }
  const ValueList* list = value.as_list();
  if (!list) return value;
  ValueList kept;
  for (const Value& item : *list) {
    if (const RowValue* row = item.as_row()) {
      RowValue copy = *row;
      bool row_dies = false;
      for (std::size_t i = 0; i < copy.fields.size(); ++i)
        copy.fields[i] = without(field.row->fields[i], copy.fields[i], gone, row_dies);
      if (!row_dies) kept.push_back(copy == *row ? item : Value::row(std::move(copy)));
    } else if (!item.as<AnyId>() || *item.as<AnyId>() != gone) {
      kept.push_back(item);
    }
  }
  if (kept.size() < list->size() && field.on_removal == OnRemoval::follow) kills = true;
  return kept == *list ? value : Value::list(std::move(kept));
}

} // namespace

std::vector<AnyId> EditBuilder::drop_references(AnyId gone) {
  std::vector<AnyId> owners_to_go;
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab_); ++i) {
      const AnyId owner =
          store.table->id ? store.table->id(store.at(std::as_const(lab_), i)) : AnyId{kind, 0};
      bool goes = false;
      for (const FieldInfo& f : store.table->fields) {
        if (f.id_kinds == 0 && !f.row) continue;
        const Value before = f.get(store.at(std::as_const(lab_), i));
        Value after = without(f, before, gone, goes);
        if (goes) break;
        if (!(after == before)) step(SetField{owner, &f, before, std::move(after)});
      }
      if (goes) owners_to_go.push_back(owner);
    }
  }
  return owners_to_go;
}

void EditBuilder::remove(AnyId id) {
  if (!exists(lab_, id) || !store_of(id.kind).erase) return;
  if (std::find(removing_.begin(), removing_.end(), id) != removing_.end()) return;
  removing_.push_back(id);
  for (const AnyId owner : drop_references(id)) remove(owner);
  removing_.pop_back();
  const auto place = place_of(lab_, id);
  if (!place) return;
  step(RemoveElement{*place, std::make_shared<const AnyElement>(store_of(id.kind).take(lab_, *place))});
}

void EditBuilder::move_to(AnyId id, std::size_t place) {
  const auto from = place_of(lab_, id);
  assert(from && "no such element");
  if (*from == place) return;
  auto element = std::make_shared<const AnyElement>(store_of(id.kind).take(lab_, *from));
  step(RemoveElement{*from, element});
  step(InsertElement{place, element});
}

Edit EditBuilder::take(Message label) && { return Edit{std::move(label), std::move(steps_)}; }

Edit set_field(const Lab& lab, AnyId id, std::string_view key, Value value) {
  EditBuilder b(lab);
  b.set(id, key, std::move(value));
  return std::move(b).take(say(text::label_change, info_of(id.kind).field(key)->label, name_of(lab, id)));
}

Edit remove_elements(const Lab& lab, std::span<const AnyId> ids) {
  EditBuilder b(lab);
  std::vector<std::string> names;
  for (const AnyId id : ids) {
    names.push_back(name_of(lab, id));
    b.remove(id);
  }
  return std::move(b).take(say(text::label_remove, names));
}

} // namespace snug
