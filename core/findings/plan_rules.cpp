#include "core/findings/same_names.h"
#include "core/findings/secrets.h"
#include "core/findings/tools.h"
#include "core/text/lab_text.h"

#include <algorithm>
#include <array>
#include <set>

namespace snug {

namespace {

constexpr std::string_view kPractice = "common practice, no published source";

void check_exercise_empty(const Context& c, std::vector<Finding>& out) {
  for (const Exercise& e : c.lab.exercises)
    if (e.on.empty())
      out.push_back(found(Severity::note, say(text::exercise_empty, c.name(e.id)),
                          say(text::exercise_empty_why), {e.id}));
}

void check_exercise_twice(const Context& c, std::vector<Finding>& out) {
  std::vector<std::uint32_t> listed_by(c.lab.machines.size(), kNowhere);
  for (std::uint32_t e = 0; e < c.lab.exercises.size(); ++e) {
    if (c.budgets[e + 1].running_count == c.lab.exercises[e].on.size()) continue; // all are different
    std::vector<std::string> twice;
    for (const MachineId id : c.lab.exercises[e].on) {
      const std::uint32_t m = c.index.place(id);
      if (m == kNowhere) continue;
      if (listed_by[m] == e) twice.push_back(c.name(id));
      listed_by[m] = e;
    }
    if (twice.empty()) continue;
    const AnyId id = c.lab.exercises[e].id;
    out.push_back(found(Severity::note, say(text::exercise_twice, c.name(id), twice),
                        say(text::exercise_twice_why), {id}));
  }
}
std::optional<Fix> fix_exercise_twice(const Context& c, const Finding& f) {
  std::vector<MachineId> once;
  std::set<MachineId> seen;
  for (const MachineId id : c.lab.exercises[c.index.place(f.places[0])].on)
    if (seen.insert(id).second) once.push_back(id);
  return set_one(c, say(text::fix_list_once), f.places[0], "on", ids_value(once));
}

// One note for all: a role is a help, not a duty.
void check_no_role(const Context& c, std::vector<Finding>& out) {
  std::vector<AnyId> places;
  c.addresses.facts().each_machine(MachineMark::no_role,
                                   [&](std::uint32_t m) { places.push_back(c.lab.machines[m].id); });
  note_of_all(c, std::move(places), {text::machine_no_role, text::machine_no_role_more},
              say(text::machine_no_role_why), out);
}

// `wish`, or the first of wish-2, wish-3 … that no machine has.
std::string free_name(const std::set<std::string, std::less<>>& taken, const std::string& wish) {
  if (!taken.contains(wish)) return wish;
  int number = 2;
  while (taken.contains(wish + "-" + std::to_string(number))) ++number;
  return wish + "-" + std::to_string(number);
}
std::set<std::string, std::less<>> names_of(const Lab& lab) {
  std::set<std::string, std::less<>> names;
  for (const Machine& m : lab.machines) names.insert(m.name);
  return names;
}

void check_no_name(const Context& c, std::vector<Finding>& out) {
  c.addresses.facts().each_machine(MachineMark::unnamed, [&](std::uint32_t m) {
    const AnyId id = c.lab.machines[m].id;
    out.push_back(found(Severity::caution, say(text::machine_no_name, to_text(id)),
                        say(text::machine_no_name_why), {id}));
  });
}
std::optional<Fix> fix_no_name(const Context& c, const Finding& f) {
  const std::uint32_t role = c.index.machines()[c.index.place(f.places[0])].role;
  const std::string key = role == kNowhere ? std::string() : c.lab.roles[role].key;
  const std::string name = free_name(names_of(c.lab), key.empty() ? "machine" : key);
  return set_one(c, say(text::fix_name, name), f.places[0], "name", name);
}

void check_name_twice(const Context& c, std::vector<Finding>& out) {
  const auto name = [&](std::uint32_t m) -> std::string_view { return c.lab.machines[m].name; };
  for (const auto& group : same_texts(c.index.name_hashes().own, name)) {
    std::vector<AnyId> places;
    for (const std::uint32_t m : group) places.push_back(c.lab.machines[m].id);
    out.push_back(found(Severity::caution,
                        say(text::machine_name_twice, c.lab.machines[group.front()].name,
                            Count{static_cast<std::int64_t>(group.size())}),
                        say(text::machine_name_twice_why), std::move(places)));
  }
}
std::optional<Fix> fix_name_twice(const Context& c, const Finding& f) {
  auto taken = names_of(c.lab);
  const std::string wish = c.lab.machines[c.index.place(f.places[0])].name;
  if (wish.size() > 190) return std::nullopt;
  return build_fix(c, say(text::fix_names), [&](EditBuilder& b) {
    for (std::size_t i = 1; i < f.places.size(); ++i) {
      const std::string name = free_name(taken, wish);
      taken.insert(name);
      b.set(f.places[i], "name", name);
    }
  });
}

void tell_secret(const Context& c, AnyId id, const Template& what, std::vector<Finding>& out) {
  out.push_back(found(Severity::caution, say(what, c.name(id)), say(text::secret_why), {id}));
}

void check_secrets(const Context& c, std::vector<Finding>& out) {
  const auto notes = [&](AnyId id, const std::string& text) {
    if (!text.empty() && looks_secret(text)) tell_secret(c, id, text::secret_notes, out);
  };
  notes({Kind::lab, 0}, c.lab.facts.notes);
  notes({Kind::pc, 0}, c.lab.pc.notes);
  for (const Lan& x : c.lab.lans) notes(x.id, x.notes);
  for (const Place& x : c.lab.places) notes(x.id, x.notes);
  for (const Segment& x : c.lab.segments) notes(x.id, x.notes);
  c.addresses.facts().each_machine(
      MachineMark::notes, [&](std::uint32_t m) { notes(c.lab.machines[m].id, c.lab.machines[m].notes); });
  for (const Promise& x : c.lab.promises) notes(x.id, x.notes);
  for (const Exercise& x : c.lab.exercises)
    if (looks_secret(x.task)) tell_secret(c, x.id, text::secret_task, out);
  for (const Accepted& x : c.lab.accepted)
    if (looks_secret(x.reason)) tell_secret(c, x.id, text::secret_reason, out);
}

// The last rule: everything that occurs stands in `out`.
void check_accepted(const Context& c, std::vector<Finding>& out) {
  if (c.lab.accepted.empty()) return;
  using Identity = std::pair<std::string_view, std::set<AnyId>>;
  std::set<Identity> there;
  for (const Finding& f : out)
    there.insert({f.rule ? f.rule->id : std::string_view{}, {f.places.begin(), f.places.end()}});
  for (const Accepted& a : c.lab.accepted) {
    if (there.contains({a.rule, {a.places.begin(), a.places.end()}})) continue;
    const auto other = std::find_if(out.begin(), out.end(),
                                    [&](const Finding& f) { return f.rule && f.rule->id == a.rule; });
    if (other == out.end()) {
      out.push_back(found(Severity::note, say(text::accepted_gone, c.name(a.id)),
                          say(text::accepted_gone_why), {a.id}));
      continue;
    }
    std::vector<std::string> places;
    for (const AnyId id : other->places) places.push_back(to_text(id));
    out.push_back(found(Severity::note, say(text::accepted_elsewhere, c.name(a.id), std::move(places)),
                        say(text::accepted_elsewhere_why), {a.id}));
  }
}
std::optional<Fix> fix_accepted(const Context& c, const Finding& f) {
  if (f.message.text == &text::accepted_elsewhere) return std::nullopt;
  return build_fix(c, say(text::fix_remove_accepted), [&](EditBuilder& b) { b.remove(f.places[0]); });
}

} // namespace

std::span<const Rule> plan_rules() {
  static const std::array list{
      Rule{"machine-no-name", Topic::plan, Severity::caution, "A machine has no name", kPractice,
           check_no_name, fix_no_name},
      Rule{"machine-name-twice", Topic::plan, Severity::caution, "Machines have the same name", kPractice,
           check_name_twice, fix_name_twice},
      Rule{"secret-in-notes", Topic::plan, Severity::caution, "Notes look like they hold a password or a key",
           kPractice, check_secrets},
      Rule{"machine-no-role", Topic::plan, Severity::note, "A machine has no role", kPractice, check_no_role},
      Rule{"exercise-empty", Topic::plan, Severity::note, "Nothing is on in an exercise", kPractice,
           check_exercise_empty},
      Rule{"exercise-twice", Topic::plan, Severity::note, "An exercise lists a machine more than once",
           kPractice, check_exercise_twice, fix_exercise_twice},
      Rule{"accepted-gone", Topic::plan, Severity::note, "An accepted finding does not occur any more",
           kPractice, check_accepted, fix_accepted},
  };
  return list;
}

} // namespace snug
