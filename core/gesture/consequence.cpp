#include "core/gesture/consequence.h"

#include "core/budget/memory.h"
#include "core/text/gesture_text.h"

#include <algorithm>

namespace snug {

namespace {

const MemoryBudget* budget_of(const ExerciseBudgets& budgets, AnyId id) {
  const auto it = std::find_if(budgets.memory.begin(), budgets.memory.end(),
                               [id](const MemoryBudget& b) { return b.of == id; });
  return it == budgets.memory.end() ? nullptr : &*it;
}

// In a hypervisor as its room says it.
Message then_has(const Index& index, const MemoryBudget& b, const std::string& name) {
  if (b.headroom() < 0) return say(text::gesture_then_over, name, Mib{-b.headroom()});
  if (b.verdict() == Verdict::tight)
    return say(text::gesture_then_little, name, Mib{b.headroom()}, Mib{b.keep_free});
  if (b.of.kind == Kind::pc) return say(text::gesture_then_free, name, Mib{b.headroom()});
  const std::int64_t room = room_for_guest(index, b);
  return room > 0 ? say(text::gesture_then_room, name, Mib{room}) : say(text::gesture_then_no_room, name);
}

void add_rooms(const Analysis& now, const Analysis& then, ExerciseId exercise, std::size_t most,
               std::vector<Message>& out) {
  const auto& after = then.budgets(exercise).memory;
  const auto say_room = [&](const MemoryBudget& b) {
    const MemoryBudget* before = budget_of(now.budgets(exercise), b.of);
    if (out.size() >= most || (before && before->headroom() == b.headroom())) return;
    const std::string name = name_of(then.lab(), b.of);
    out.push_back(then_has(then.index(), b, name));
  };
  for (std::size_t i = 1; i < after.size(); ++i) say_room(after[i]);
  if (!after.empty()) say_room(after.front());
}

bool same_finding(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.places == b.places && a.severity == b.severity;
}

// What was a caution and becomes an error does not go.
bool grows(const Finding& f, std::span<const Finding> then) {
  return std::any_of(then.begin(), then.end(), [&f](const Finding& o) {
    return o.rule->topic == f.rule->topic && o.severity < f.severity && !f.places.empty() &&
           !o.places.empty() && f.places.front() == o.places.front();
  });
}

struct Words {
  const Template &one, &rest;
};
constexpr Words kComes{text::gesture_comes, text::gesture_comes_more};
constexpr Words kGoes{text::gesture_goes, text::gesture_goes_more};

// Findings of `in` that `without` has not, as sentences.
void add_findings(const Analysis& in, const Analysis& without, ExerciseId exercise, const Words& words,
                  std::size_t most, std::vector<Message>& out) {
  std::size_t said = 0;
  for (const Finding& f : in.findings()) {
    if (f.accepted || f.severity == Severity::note || !holds_in(in.lab(), f, exercise)) continue;
    const auto others = without.findings();
    if (std::any_of(others.begin(), others.end(), [&](const Finding& o) { return same_finding(f, o); }))
      continue;
    if (&words == &kGoes && grows(f, others)) continue;
    if (said++ < most) out.push_back(say(words.one, f.message));
  }
  if (said > most) out.push_back(say(words.rest, Count{static_cast<std::int64_t>(said - most)}));
}

} // namespace

std::vector<Message> consequences(const Analysis& now, const Analysis& then, ExerciseId exercise,
                                  std::size_t most) {
  std::vector<Message> out;
  add_rooms(now, then, exercise, most, out);
  add_findings(then, now, exercise, kComes, most, out);
  add_findings(now, then, exercise, kGoes, most, out);
  return out;
}

} // namespace snug
