#include "core/report/changes.h"

#include "core/base/clean.h"
#include "core/model/json_text.h"
#include "core/report/neighbours_moved.h"
#include "core/text/changes_text.h"

#include <algorithm>
#include <unordered_set>

namespace snug {

namespace {

// A value as a person reads it: names instead of ids.
std::string shown(const Lab& lab, const FieldInfo& f, const Value& v) {
  if (const AnyId* id = v.as<AnyId>()) return name_of(lab, *id);
  if (const ValueList* list = v.as_list()) {
    std::string out;
    for (const Value& item : *list) out += (out.empty() ? "" : "; ") + shown(lab, f, item);
    return out.empty() ? "none" : out;
  }
  if (const RowValue* row = v.as_row()) {
    std::string out;
    const auto columns = f.row->fields;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (!row->fields[i].is_set()) continue;
      const bool* flag = row->fields[i].as<bool>();
      if (flag && !*flag) continue;
      const std::int64_t* zero = row->fields[i].as<std::int64_t>();
      if (zero && *zero == 0) continue;
      const std::string text = flag ? std::string(columns[i].label) : shown(lab, columns[i], row->fields[i]);
      const bool labelled = row->fields[i].as<std::int64_t>() != nullptr;
      out += (out.empty() ? "" : " ") + (labelled ? std::string(columns[i].label) + " " + text : text);
    }
    return out;
  }
  const bool on_pc = f.key == "carrier" && !v.is_set();
  return on_pc ? name_of(lab, AnyId{Kind::pc, 0}) : show(f, v);
}

// Said in words.
bool is_place(AnyId id, const FieldInfo& f) {
  return id.kind == Kind::machine && (f.key == "band" || f.key == "order");
}

std::string described(const Lab& lab, AnyId id) {
  const std::string noun(info_of(id.kind).noun);
  const std::string name = name_of(lab, id);
  return name.rfind(noun, 0) == 0 ? name : noun + " " + name;
}

std::string or_nothing(const std::string& text) { return text.empty() ? "nothing" : clean(text); }

void compare(const Lab& from, const Lab& to, AnyId id, std::vector<Change>& out) {
  const void* a = object_at(from, id);
  const void* b = object_at(to, id);
  for (const FieldInfo& f : info_of(id.kind).fields) {
    if (f.owner == Owner::program || is_place(id, f) || f.equal(a, b)) continue;
    const Value before = f.get(a);
    const Value after = f.get(b);
    out.push_back({ChangeKind::changed, id, name_of(to, id), std::string(f.label), shown(from, f, before),
                   shown(to, f, after)});
  }
}

} // namespace

std::vector<Change> changes(const Lab& from, const Lab& to) {
  std::vector<Change> out;
  const std::vector<MachineId> moved = moved_among_neighbours(from, to);
  for (const Kind kind : kinds_in_document()) {
    const Store& store = store_of(kind);
    if (!store.insert) {
      compare(from, to, AnyId{kind, 0}, out);
      continue;
    }
    std::unordered_set<AnyId> before;
    for (std::size_t i = 0; i < store.count(from); ++i) before.insert(store.table->id(store.at(from, i)));
    std::unordered_set<AnyId> after;
    for (std::size_t i = 0; i < store.count(to); ++i) after.insert(store.table->id(store.at(to, i)));
    for (std::size_t i = 0; i < store.count(from); ++i) {
      const AnyId id = store.table->id(store.at(from, i));
      if (after.count(id) == 0) out.push_back({ChangeKind::removed, id, described(from, id), {}, {}, {}});
    }
    for (std::size_t i = 0; i < store.count(to); ++i) {
      const AnyId id = store.table->id(store.at(to, i));
      if (before.count(id) == 0) {
        out.push_back({ChangeKind::added, id, described(to, id), {}, {}, {}});
      } else {
        compare(from, to, id, out);
        if (std::find(moved.begin(), moved.end(), id) != moved.end())
          out.push_back({ChangeKind::changed, id, name_of(to, id), english(say(text::changes_place)),
                         place_words(from, MachineId{id.number}), place_words(to, MachineId{id.number})});
      }
    }
  }
  return out;
}

std::string changes_text(const std::vector<Change>& list) {
  if (list.empty()) return "no differences\n";
  std::string out;
  for (const Change& c : list) {
    if (c.kind == ChangeKind::added) {
      out += "added    " + clean(c.what) + "\n";
    } else if (c.kind == ChangeKind::removed) {
      out += "removed  " + clean(c.what) + "\n";
    } else {
      out += "changed  " + clean(c.what) + ": " + c.field + " from " + or_nothing(c.before) + " to " +
             or_nothing(c.after) + "\n";
    }
  }
  return out;
}

std::string changes_json(const std::vector<Change>& list) {
  std::string out = "{\"changes\": [";
  const auto member = [&out](std::string_view key, std::string_view value) {
    out += ", ";
    append_json_string(out, key);
    out += ": ";
    append_json_string(out, clean(value));
  };
  for (std::size_t i = 0; i < list.size(); ++i) {
    const Change& c = list[i];
    out += i > 0 ? ",\n  {" : "\n  {";
    out += "\"id\": ";
    append_json_string(out, to_text(c.place));
    member("change", c.kind == ChangeKind::added     ? "added"
                     : c.kind == ChangeKind::removed ? "removed"
                                                     : "changed");
    member("what", c.what);
    if (c.kind == ChangeKind::changed) {
      member("field", c.field);
      member("before", c.before);
      member("after", c.after);
    }
    out += '}';
  }
  return out + (list.empty() ? "]}\n" : "\n]}\n");
}

} // namespace snug
