#include "core/edit/build.h"

#include "core/text/model_text.h"

#include <algorithm>
#include <cassert>
#include <unordered_set>

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

using Gone = std::unordered_set<AnyId>;

KindSet kinds_of(const Gone& gone) {
  KindSet set = 0;
  for (const AnyId id : gone) set |= kinds({id.kind});
  return set;
}

bool may_refer(const FieldInfo& f, KindSet to) {
  if (!f.row) return (f.id_kinds & to) != 0;
  return std::any_of(f.row->fields.begin(), f.row->fields.end(),
                     [to](const FieldInfo& inner) { return may_refer(inner, to); });
}

// `value` without what is gone. `kills` is set when the reference is one its owner cannot be without.
Value without(const FieldInfo& field, const Value& value, const Gone& gone, bool& kills) {
  if (const AnyId* id = value.as<AnyId>()) {
    if (!gone.contains(*id)) return value;
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
    } else if (!item.as<AnyId>() || !gone.contains(*item.as<AnyId>())) {
      kept.push_back(item);
    }
  }
  if (kept.size() < list->size() && field.on_removal == OnRemoval::follow) kills = true;
  return kept == *list ? value : Value::list(std::move(kept));
}

// Calls use(owner, object, field) for each field of what stays that may refer to what goes; `follows`: only
// those that their owner cannot be without.
template <typename Use>
void each_reference(const Lab& lab, const Gone& gone, bool follows, Use use) {
  const KindSet to = kinds_of(gone);
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    std::vector<const FieldInfo*> fields;
    for (const FieldInfo& f : store.table->fields)
      if (may_refer(f, to) && (!follows || f.on_removal == OnRemoval::follow)) fields.push_back(&f);
    for (std::size_t i = 0; i < store.count(lab) && !fields.empty(); ++i) {
      const void* object = store.at(lab, i);
      const AnyId owner = store.table->id ? store.table->id(object) : AnyId{kind, 0};
      for (const FieldInfo* f : fields)
        if (!gone.contains(owner)) use(owner, object, *f);
    }
  }
}

// Whether there were any more who cannot be without what goes.
bool add_followers(const Lab& lab, Gone& gone) {
  std::vector<AnyId> more;
  each_reference(lab, gone, true, [&](AnyId owner, const void* object, const FieldInfo& f) {
    bool goes = false;
    without(f, f.get(object), gone, goes);
    if (goes && store_of(owner.kind).erase) more.push_back(owner);
  });
  gone.insert(more.begin(), more.end());
  return !more.empty();
}

} // namespace

void EditBuilder::remove(AnyId id) { remove(std::span(&id, 1)); }

void EditBuilder::remove(std::span<const AnyId> ids) {
  Gone gone;
  for (const AnyId id : ids)
    if (exists(lab_, id) && store_of(id.kind).erase) gone.insert(id);
  if (gone.empty()) return;
  while (add_followers(lab_, gone)) {
  }
  std::vector<SetField> cut;
  each_reference(lab_, gone, false, [&](AnyId owner, const void* object, const FieldInfo& f) {
    bool goes = false;
    Value before = f.get(object), after = without(f, before, gone, goes);
    if (!(after == before)) cut.push_back({owner, &f, std::move(before), std::move(after)});
  });
  for (SetField& s : cut) step(std::move(s));
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    for (std::size_t i = store.erase ? store.count(lab_) : 0; i-- > 0;)
      if (gone.contains(store.table->id(store.at(std::as_const(lab_), i))))
        step(RemoveElement{i, std::make_shared<const AnyElement>(store.take(lab_, i))});
  }
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
  constexpr std::size_t kNamed = 5; // more are counted
  EditBuilder b(lab);
  b.remove(ids);
  if (ids.size() > kNamed)
    return std::move(b).take(
        say(text::label_remove, say(text::label_things, Count{static_cast<std::int64_t>(ids.size())})));
  std::vector<std::string> names;
  for (const AnyId id : ids) names.push_back(name_of(lab, id));
  return std::move(b).take(say(text::label_remove, names));
}

} // namespace snug
