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

Message word_of(const ExerciseStanding& s) {
  if (s.budgets == Verdict::over) return say(text::standing_over);
  if (s.errors > 0) return say(text::standing_errors, Count{s.errors});
  if (s.budgets == Verdict::tight) return say(text::standing_tight);
  if (s.cautions > 0) return say(text::standing_cautions, Count{s.cautions});
  return say(text::standing_fits);
}

void say_why(const Lab& lab, const Found& errors, const Found& cautions, ExerciseStanding& s) {
  if (s.budgets == Verdict::over) s.why.push_back(say(text::standing_over_why, names_of(lab, s.where)));
  if (errors.first) s.why.push_back(say(text::standing_errors_why, Count{s.errors}, errors.first->message));
  if (s.budgets == Verdict::tight) s.why.push_back(say(text::standing_tight_why, names_of(lab, s.where)));
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
    s.word = word_of(s);
    say_why(a.lab(), open.errors[i], open.cautions[i], s);
    out.push_back(std::move(s));
  }
  return out;
}

} // namespace snug
