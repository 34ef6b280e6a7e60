#include "core/roles/read_roles.h"

#include "core/document/read_with.h"
#include "core/text/roles_text.h"

#include "core/model/store.h"

#include <algorithm>
#include <unordered_map>

namespace snug {

namespace {

using detail::Fault;

constexpr detail::DocumentForm kRolesForm{"snuglab-roles", &text::roles_not_object, &text::roles_foreign,
                                          &text::roles_other_format, &text::roles_newer};

Fault at_role(Message m, std::size_t place, std::string_view key = {}) {
  std::string pointer = "/roles/" + std::to_string(place);
  if (!key.empty()) (pointer += '/') += key;
  return {std::move(m), {std::move(pointer)}, {}};
}

// Something of a singleton is said; the reader raises the next id by itself.
bool is_said(const FieldInfo& f, const void* object) { return f.key != "next_id" && !f.is_default(object); }

bool is_used(const Lab& lab, const Store& store) {
  if (store.insert) return store.count(lab) > 0;
  const std::span<const FieldInfo> fields = store.table->fields;
  return std::any_of(fields.begin(), fields.end(),
                     [&](const FieldInfo& f) { return is_said(f, store.at(lab, 0)); });
}

std::optional<Fault> check_only_roles(const Lab& lab) {
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    if (kind == Kind::role || !is_used(lab, store)) continue;
    const std::string_view key = store.table->collection;
    return Fault{say(text::roles_only, key), {'/' + std::string(key), detail::Part::key}, {}};
  }
  return std::nullopt;
}

struct Mark {
  std::string_view key;
  std::int64_t mib;
};

// The first of the marks that is less than one before it.
std::optional<Fault> check_marks(const Role& r, std::size_t place, std::initializer_list<Mark> marks) {
  for (const Mark* m = marks.begin() + 1; m < marks.end(); ++m)
    if (m->mib < (m - 1)->mib)
      return at_role(say(text::roles_marks, m->key, r.key, Mib{m->mib}, (m - 1)->key, Mib{(m - 1)->mib}),
                     place, m->key);
  return std::nullopt;
}

std::optional<Fault> check_footprint(const Role& r, std::size_t place) {
  const auto too_large = [&](std::string_view key, std::int64_t own, std::int64_t usual) {
    return at_role(say(text::roles_footprint, key, r.key, Mib{own}, Mib{usual}), place, key);
  };
  if (r.lean_footprint > 0 && r.lean_footprint >= r.lean_usual)
    return too_large("lean_footprint", r.lean_footprint, r.lean_usual);
  if (r.current_footprint > 0 && r.current_footprint >= r.current_usual)
    return too_large("current_footprint", r.current_footprint, r.current_usual);
  return std::nullopt;
}

std::optional<Fault> check_role(const Role& r, std::size_t place) {
  if (r.key.empty()) return at_role(say(text::roles_no_key), place);
  if (r.title.empty()) return at_role(say(text::roles_no_title, r.key), place);
  if (auto fault = check_marks(r, place,
                               {{"lean_refused_below", r.lean_refused_below},
                                {"lean_least", r.lean_least},
                                {"lean_usual", r.lean_usual}}))
    return fault;
  if (auto fault = check_marks(r, place,
                               {{"current_refused_below", r.current_refused_below},
                                {"current_least", r.current_least},
                                {"current_usual", r.current_usual}}))
    return fault;
  return check_footprint(r, place);
}

std::optional<Fault> check_roles(const Lab& lab) {
  if (auto fault = check_only_roles(lab)) return fault;
  std::unordered_map<std::string_view, std::size_t> first;
  for (std::size_t i = 0; i < lab.roles.size(); ++i) {
    if (auto fault = check_role(lab.roles[i], i)) return fault;
    const auto [it, is_new] = first.try_emplace(lab.roles[i].key, i);
    if (is_new) continue;
    Fault fault = at_role(say(text::roles_key_twice, lab.roles[i].key), i, "key");
    fault.first = detail::Spot{"/roles/" + std::to_string(it->second) + "/key"};
    return fault;
  }
  return std::nullopt;
}

} // namespace

Result<std::vector<Role>> read_roles(std::string_view bytes, std::string_view file_name) {
  auto loaded = detail::read_with(bytes, file_name, migrations(), kRolesForm);
  if (!loaded) return fail(std::move(loaded.error()));
  if (auto fault = check_roles(loaded->lab)) {
    // A mark that the file leaves at its default stands nowhere: the role is the place then.
    std::string& pointer = fault->spot.pointer;
    if (!detail::find_pointer(bytes, pointer, fault->spot.part)) pointer.resize(pointer.rfind('/'));
    return fail(detail::located(std::move(*fault), bytes, file_name));
  }
  return std::move(loaded->lab.roles);
}

} // namespace snug
