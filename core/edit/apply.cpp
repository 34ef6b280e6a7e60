#include "core/edit/edit.h"
#include "core/text/model_text.h"

#include <algorithm>
#include <cassert>

namespace snug {

namespace {

template <typename... F>
struct Overload : F... {
  using F::operator()...;
};
template <typename... F>
Overload(F...) -> Overload<F...>;

Result<void> do_set(Lab& lab, const SetField& s) {
  void* object = object_at(lab, s.id);
  if (!object) return fail(text::edit_no_element, to_text(s.id));
  const StructInfo& table = info_of(s.id.kind);
  if (!s.field || table.field(s.field->key) != s.field)
    return fail(text::edit_no_field, table.noun, s.field ? s.field->key : std::string_view{});
  if (!(s.field->get(object) == s.before)) return fail(text::edit_stale, s.field->label, name_of(lab, s.id));
  if (auto checked = check(*s.field, s.after); !checked) return checked;
  if (!s.field->set(object, s.after)) return fail(text::edit_stale, s.field->label, name_of(lab, s.id));
  return {};
}

Result<void> do_set_unknown(Lab& lab, const SetUnknown& s) {
  void* object = object_at(lab, s.id);
  if (!object) return fail(text::edit_no_element, to_text(s.id));
  Unknown& unknown = info_of(s.id.kind).unknown(object);
  if (!(unknown == s.before)) return fail(text::edit_stale, "something", name_of(lab, s.id));
  unknown = s.after;
  return {};
}

Result<void> check_element(const AnyElement& element) {
  const void* object = object_of(element);
  for (const FieldInfo& f : info_of(kind_of(element)).fields)
    if (auto checked = check(f, f.get(object)); !checked) return checked;
  return {};
}

Result<void> do_insert(Lab& lab, const InsertElement& s) {
  const AnyId id = id_of(*s.element);
  const Kind kind = kind_of(*s.element);
  const Store& store = store_of(kind);
  const std::size_t count = store.count(lab);
  if (!id || exists(lab, id)) return fail(text::edit_twice, to_text(id));
  if (s.place > count) return fail(text::edit_place, to_text(id), Count{static_cast<std::int64_t>(s.place)});
  if (count >= store.table->max_count)
    return fail(text::edit_full, Count{static_cast<std::int64_t>(store.table->max_count)},
                store.table->collection);
  if (auto checked = check_element(*s.element); !checked) return checked;
  store.insert(lab, s.place, *s.element);
  return {};
}

Result<void> do_remove(Lab& lab, const RemoveElement& s) {
  const AnyId id = id_of(*s.element);
  const Store& store = store_of(kind_of(*s.element));
  if (s.place >= store.count(lab) || store.table->id(store.at(lab, s.place)) != id)
    return fail(text::edit_no_element, to_text(id));
  if (!(store.take(lab, s.place) == *s.element)) return fail(text::edit_stale, "something", name_of(lab, id));
  store.erase(lab, s.place);
  return {};
}

Result<void> do_step(Lab& lab, const Primitive& p) {
  return std::visit(Overload{[&lab](const SetField& s) { return do_set(lab, s); },
                             [&lab](const SetUnknown& s) { return do_set_unknown(lab, s); },
                             [&lab](const InsertElement& s) { return do_insert(lab, s); },
                             [&lab](const RemoveElement& s) { return do_remove(lab, s); }},
                    p);
}

Primitive inverse_step(const Primitive& p) {
  return std::visit(Overload{[](const SetField& s) -> Primitive {
                               return SetField{s.id, s.field, s.after, s.before};
                             },
                             [](const SetUnknown& s) -> Primitive {
                               return SetUnknown{s.id, s.after, s.before};
                             },
                             [](const InsertElement& s) -> Primitive {
                               return RemoveElement{s.place, s.element};
                             },
                             [](const RemoveElement& s) -> Primitive {
                               return InsertElement{s.place, s.element};
                             }},
                    p);
}

Result<void> check_references(const Lab& lab, AnyId owner, const FieldInfo& field, const Value& value) {
  AnyId missing;
  Term label = field.label;
  each_id(field, value, [&](const FieldInfo& f, AnyId id) {
    if (missing || exists(lab, id)) return;
    missing = id;
    label = f.label;
  });
  if (!missing) return {};
  return fail(text::edit_dangling, label, name_of(lab, owner), to_text(missing));
}

Result<void> check_all_references(const Lab& lab) {
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    for (std::size_t i = 0; i < store.count(lab); ++i) {
      const void* object = store.at(lab, i);
      const AnyId owner = store.table->id ? store.table->id(object) : AnyId{kind, 0};
      for (const FieldInfo& f : store.table->fields) {
        if (f.id_kinds == 0 && !f.row) continue;
        if (f.is_default(object)) continue;
        if (auto checked = check_references(lab, owner, f, f.get(object)); !checked) return checked;
      }
    }
  }
  return {};
}

// Follows `up` from `start`; true when it comes back to it or does not end.
template <typename E, typename Up>
bool in_cycle(const Lab& lab, Id<E::kind> start, Up up) {
  std::size_t steps = 0;
  for (auto id = start; id;) {
    const E* e = find<E>(lab, id);
    if (!e) return false;
    id = up(*e);
    if (id == start || ++steps > list_of<E>(lab).size()) return true;
  }
  return false;
}

Result<void> check_cycles(const Lab& lab, AnyId id) {
  if (id.kind == Kind::machine &&
      in_cycle<Machine>(lab, MachineId{id.number}, [](const Machine& m) { return m.carrier; }))
    return fail(text::edit_cycle, name_of(lab, id));
  if (id.kind == Kind::disk && in_cycle<Disk>(lab, DiskId{id.number}, [](const Disk& d) { return d.base; }))
    return fail(text::edit_base_cycle, name_of(lab, id));
  return {};
}

// What must hold when all steps are done: references, carriers and bases. Looks only at what the steps
// changed unless something was removed.
Result<void> check_whole(const Lab& lab, const Edit& e) {
  bool removed = false;
  for (const Primitive& p : e.steps) {
    if (const auto* s = std::get_if<SetField>(&p)) {
      if (!exists(lab, s->id)) continue;
      if (auto r = check_references(lab, s->id, *s->field, s->field->get(object_at(lab, s->id))); !r)
        return r;
      if (s->field->key == "carrier" || s->field->key == "base")
        if (auto r = check_cycles(lab, s->id); !r) return r;
    } else if (const auto* i = std::get_if<InsertElement>(&p)) {
      const AnyId id = id_of(*i->element);
      const void* object = object_at(lab, id);
      if (!object) continue;
      for (const FieldInfo& f : info_of(id.kind).fields)
        if (auto r = check_references(lab, id, f, f.get(object)); !r) return r;
      if (auto r = check_cycles(lab, id); !r) return r;
    } else if (std::holds_alternative<RemoveElement>(p)) {
      removed = true;
    }
  }
  return removed ? check_all_references(lab) : Result<void>{};
}

void roll_back(Lab& lab, const Edit& e, std::size_t done) {
  while (done-- > 0) {
    [[maybe_unused]] const auto undone = do_step(lab, inverse_step(e.steps[done]));
    assert(undone.has_value());
  }
}

} // namespace

Edit inverse(const Edit& e) {
  Edit out{e.label, {}};
  out.steps.reserve(e.steps.size());
  std::transform(e.steps.rbegin(), e.steps.rend(), std::back_inserter(out.steps), inverse_step);
  return out;
}

Result<bool> apply(Lab& lab, const Edit& e) {
  std::size_t done = 0;
  Result<void> result;
  while (done < e.steps.size() && (result = do_step(lab, e.steps[done]))) ++done;
  if (result) result = check_whole(lab, e);
  if (!result) {
    roll_back(lab, e, done);
    return fail(std::move(result.error()));
  }
  return !e.steps.empty();
}

std::vector<AnyId> touched(const Edit& e) {
  std::vector<AnyId> ids;
  const auto add = [&ids](AnyId id) {
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  };
  for (const Primitive& p : e.steps)
    std::visit(Overload{[&](const SetField& s) {
                          if (s.id.kind != Kind::lab || s.field->owner != Owner::program) add(s.id);
                        },
                        [&](const SetUnknown& s) { add(s.id); },
                        [&](const InsertElement& s) { add(id_of(*s.element)); },
                        [&](const RemoveElement& s) { add(id_of(*s.element)); }},
               p);
  return ids;
}

} // namespace snug
