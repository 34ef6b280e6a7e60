#include "core/analyse/repair_alike.h"

#include "core/text/plan_text.h"

#include <algorithm>
#include <set>

namespace snug {

namespace {

bool counts(const Analysis& a, const Finding& f, std::string_view rule, ExerciseId exercise) {
  return f.rule->id == rule && !f.accepted && holds_in(a.lab(), f, exercise);
}

// Each is tried once: a repair may move a finding of its kind to another place and back.
using Tried = std::set<std::vector<AnyId>>;

std::optional<Edit> next_repair(const Analysis& a, std::string_view rule, ExerciseId exercise, Tried& tried) {
  for (const Finding& f : a.findings()) {
    if (!counts(a, f, rule, exercise) || !tried.insert(f.places).second) continue;
    if (auto fix = a.fix(f)) return std::move(fix->edit);
  }
  return std::nullopt;
}

} // namespace

AlikeRepaired repair_alike(const Analysis& a, std::string_view rule, ExerciseId exercise, std::size_t most) {
  AlikeRepaired out;
  Tried tried;
  Lab lab = a.lab();
  std::optional<Edit> next = next_repair(a, rule, exercise, tried);
  while (next && apply(lab, *next)) {
    out.edit.steps.insert(out.edit.steps.end(), next->steps.begin(), next->steps.end());
    if (++out.count == most) break;
    next = next_repair(analyse(lab), rule, exercise, tried);
  }
  out.edit.label = say(text::fix_alike, Count{static_cast<std::int64_t>(out.count)});
  return out;
}

std::size_t alike(const Analysis& a, std::string_view rule, ExerciseId exercise) {
  return static_cast<std::size_t>(
      std::count_if(a.findings().begin(), a.findings().end(),
                    [&](const Finding& f) { return counts(a, f, rule, exercise); }));
}

} // namespace snug
