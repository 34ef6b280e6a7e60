#pragma once
// What rules share.

#include "core/edit/build.h"
#include "core/findings/rule.h"

namespace snug {

inline Finding found(Severity severity, Message message, Message reason, std::vector<AnyId> places) {
  Finding f;
  f.severity = severity;
  f.message = std::move(message);
  f.reason = std::move(reason);
  f.places = std::move(places);
  return f;
}

// One note for all of them, which names some: a template of number and names, another where there are more.
// Nothing where there are none.
struct AllOrMore {
  const Template &all, &more;
};
void note_of_all(const Context&, std::vector<AnyId> places, AllOrMore, Message reason,
                 std::vector<Finding>& out);

// Occasions that are bad, and which of them is the worst: a place in Context::budgets.
struct Trouble {
  Occasions when;
  std::size_t worst = 0;
  std::int64_t badness = 0; // of the worst; 0: no occasion is bad
  explicit operator bool() const { return badness > 0; }
};
// `badness` of an exercise's budgets is above 0 where something is wrong, and larger where it is worse.
template <typename Badness>
Trouble trouble(const Context& c, Badness badness) {
  Trouble t;
  t.when.always = false;
  for (std::size_t i = 0; i < c.budgets.size(); ++i) {
    const std::int64_t n = badness(c.budgets[i]);
    if (n <= 0) continue;
    if (i == 0)
      t.when.everything_on = true;
    else
      t.when.exercises.set(i - 1);
    if (n > t.badness) t.badness = n, t.worst = i;
  }
  return t;
}
// The same, but everything on counts only where no exercise is bad: nobody needs to switch all on at once
// (DECISIONS 18).
template <typename Badness>
Trouble trouble_in_exercises(const Context& c, Badness badness) {
  const ExerciseBudgets* const all_on = c.budgets.data();
  const Trouble named =
      trouble(c, [&](const ExerciseBudgets& b) { return &b == all_on ? std::int64_t{0} : badness(b); });
  return named ? named : trouble(c, badness);
}
// An error in an exercise, and in everything on only if the lab has no exercise; else a note (DECISIONS 18).
inline Severity over_severity(const Context& c, const Trouble& t) {
  return t.when.exercises.any() || c.lab.exercises.empty() ? Severity::error : Severity::note;
}
// `in_exercise` gets the exercise's name as its last argument, `all_on` gets only the others.
template <typename... A>
Message say_when(const Context& c, std::size_t occasion, const Template& in_exercise, const Template& all_on,
                 A&&... args) {
  if (occasion == 0) return say(all_on, std::forward<A>(args)...);
  return say(in_exercise, std::forward<A>(args)..., c.name(c.lab.exercises[occasion - 1].id));
}

// A fix that sets one field.
Fix set_one(const Context&, const Message& label, AnyId id, std::string_view key, Value value);
// Switches a machine and what carries it on in the exercises of `when`.
Fix switch_on(const Context&, const Occasions& when, MachineId machine);
// Fix of several steps; `build` makes them.
template <typename Build>
Fix build_fix(const Context& c, const Message& label, Build build) {
  EditBuilder builder(c.lab);
  build(builder);
  return {label, std::move(builder).take(label)};
}
// Ids as the value of a list field.
template <Kind K>
Value ids_value(const std::vector<Id<K>>& ids) {
  ValueList list;
  for (const Id<K> id : ids) list.emplace_back(AnyId(id));
  return Value::list(std::move(list));
}
// The first place of a finding as a typed id.
template <Kind K>
Id<K> place_id(const Finding& f, std::size_t nth = 0) {
  return Id<K>{f.places[nth].number};
}

} // namespace snug
