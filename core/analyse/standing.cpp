#include "core/analyse/standing.h"

#include "core/budget/verdict.h"
#include "core/text/standing_text.h"

namespace snug {

namespace {

struct Found {
  std::int64_t count = 0;
  const Finding* first = nullptr;
  void take(const Finding& f) {
    if (count++ == 0) first = &f;
  }
};

// Errors and cautions of each occasion: everything on, then the exercises.
struct Open {
  std::vector<Found> errors, cautions;
};

Open open_findings(const Analysis& a) {
  const std::size_t occasions = a.budgets().size();
  Open out{std::vector<Found>(occasions), std::vector<Found>(occasions)};
  for (const Finding& f : a.findings()) {
    if (f.accepted || f.severity == Severity::note) continue;
    std::vector<Found>& kept = f.severity == Severity::error ? out.errors : out.cautions;
    for (std::size_t i = 0; i < occasions; ++i) {
      const bool holds = f.when.always || (i == 0 ? f.when.everything_on : f.when.exercises[i - 1]);
      if (holds) kept[i].take(f);
    }
  }
  return out;
}

std::vector<std::string> names_of(const Lab& lab, const std::vector<AnyId>& ids) {
  std::vector<std::string> names;
  for (const AnyId id : ids) names.push_back(name_of(lab, id));
  return names;
}

// What the budgets say: memory in a word of its own, anything else by name.
struct Words {
  const Template *word, *why;
};
Words words_of(const ExerciseVerdict& v) {
  if (v.verdict == Verdict::over)
    return v.memory ? Words{&text::standing_over, &text::standing_over_why}
                    : Words{&text::standing_over_disks, &text::standing_over_disks_why};
  if (v.memory) return {&text::standing_tight, &text::standing_tight_why};
  return v.disks ? Words{&text::standing_tight_disks, &text::standing_tight_disks_why}
                 : Words{&text::standing_tight_processors, &text::standing_tight_processors_why};
}

Message word_of(const ExerciseStanding& s, const Words& budgets) {
  if (s.budgets == Verdict::over) return say(*budgets.word);
  if (s.errors > 0) return say(text::standing_errors, Count{s.errors});
  if (s.budgets == Verdict::tight) return say(*budgets.word);
  if (s.cautions > 0) return say(text::standing_cautions, Count{s.cautions});
  return say(text::standing_fits);
}

void say_why(const Lab& lab, const Template& budgets, const Found& errors, const Found& cautions,
             ExerciseStanding& s) {
  if (s.budgets == Verdict::over) s.why.push_back(say(budgets, names_of(lab, s.where)));
  if (errors.first) s.why.push_back(say(text::standing_errors_why, Count{s.errors}, errors.first->message));
  if (s.budgets == Verdict::tight) s.why.push_back(say(budgets, names_of(lab, s.where)));
  if (cautions.first)
    s.why.push_back(say(text::standing_cautions_why, Count{s.cautions}, cautions.first->message));
  if (s.why.empty()) s.why.push_back(say(text::standing_good_why));
}

} // namespace

std::vector<ExerciseStanding> standings(const Analysis& a) {
  const Open open = open_findings(a);
  std::vector<ExerciseStanding> out;
  out.reserve(a.budgets().size());
  for (const ExerciseBudgets& b : a.budgets()) {
    const std::size_t i = out.size();
    ExerciseVerdict resources = verdict_of(b);
    ExerciseStanding s;
    s.exercise = b.exercise;
    s.budgets = resources.verdict;
    s.where = std::move(resources.where);
    s.errors = open.errors[i].count;
    s.cautions = open.cautions[i].count;
    if (s.budgets == Verdict::over || s.errors > 0)
      s.standing = Standing::error;
    else if (s.budgets == Verdict::tight || s.cautions > 0)
      s.standing = Standing::caution;
    const Words budgets = words_of(resources);
    s.word = word_of(s, budgets);
    say_why(a.lab(), *budgets.why, open.errors[i], open.cautions[i], s);
    out.push_back(std::move(s));
  }
  return out;
}

} // namespace snug
