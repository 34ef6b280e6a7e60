#include "core/report/findings_report.h"

#include "core/base/clean.h"
#include "core/report/escape.h"
#include "core/report/tables.h"
#include "core/report/words.h"

namespace snug {

namespace {

bool shown(const Analysis& a, const Finding& f, const ReportChoice& choice) {
  return choice.every_exercise || holds_in(a.lab(), f, choice.exercise);
}

std::string verdict_text(const MemoryBudget& b) {
  const std::string left =
      b.headroom() < 0 ? "over by " + show_mib(-b.headroom()) : show_mib(b.headroom()) + " left";
  return std::string(word(b.verdict())) + ": takes " + show_mib(b.taken) + " of " + show_mib(b.budget) +
         ", " + left;
}

std::vector<std::string> exercise_names(const Analysis& a, const Occasions& when) {
  std::vector<std::string> names;
  if (when.everything_on) names.emplace_back("everything on");
  for (std::size_t i = 0; i < a.lab().exercises.size() && i < when.exercises.size(); ++i)
    if (when.exercises[i]) names.push_back(name_of(a.lab(), a.lab().exercises[i].id));
  return names;
}

std::string finding_text(const Analysis& a, const Finding& f, bool with_exercises) {
  std::string out = std::string(word(f.severity)) + ": " + clean(english(f.message)) + "\n";
  if (!f.reason.empty()) out += "    " + clean(english(f.reason)) + "\n";
  if (with_exercises && !f.when.always) {
    const auto names = exercise_names(a, f.when);
    if (!names.empty()) out += "    in: " + clean(english(Argument(names))) + "\n";
  }
  if (const auto fix = a.fix(f)) out += "    fix: " + clean(english(fix->label)) + "\n";
  if (f.accepted) out += "    accepted: " + clean(f.accepted->reason) + "\n";
  return out + "    [" + std::string(f.rule->id) + "]\n";
}

std::string exercise_title(const Lab& lab, ExerciseId id) { return id ? name_of(lab, id) : "everything on"; }

} // namespace

std::string findings_summary(const Analysis& a, const ReportChoice& choice) {
  std::array<int, 3> n{};
  for (const Finding& f : a.findings())
    if (!f.accepted && shown(a, f, choice)) ++n[static_cast<std::size_t>(f.severity)];
  const auto part = [](int count, std::string_view noun) {
    return std::to_string(count) + " " + std::string(noun) + (count == 1 ? "" : "s");
  };
  return part(n[0], "error") + ", " + part(n[1], "caution") + ", " + part(n[2], "note");
}

std::string findings_text(const Analysis& a, const ReportChoice& choice) {
  const Lab& lab = a.lab();
  std::string out = clean(lab.facts.title.empty() ? "Untitled lab" : lab.facts.title) + "\n\n";
  for (const ExerciseBudgets& b : a.budgets()) {
    if (!choice.every_exercise && b.exercise != choice.exercise) continue;
    out += clean(exercise_title(lab, b.exercise)) + "\n";
    for (const MemoryBudget& m : b.memory) {
      if (m.of.kind == Kind::machine && m.taken == 0) continue;
      out += "    " + clean(name_of(lab, m.of)) + " " + verdict_text(m) + "\n";
    }
  }
  out += "\n" + findings_summary(a, choice) + "\n";
  for (const Finding& f : a.findings())
    if (shown(a, f, choice)) out += "\n" + finding_text(a, f, choice.every_exercise);
  return out;
}

std::string findings_markdown(const Analysis& a) {
  const Lab& lab = a.lab();
  std::string out = "# " + markdown_text(lab.facts.title.empty() ? "Untitled lab" : lab.facts.title) + "\n\n";
  Table exercises = exercise_table(a);
  exercises.title = "Does it fit?";
  out += markdown(exercises) + "\n## Findings\n\n" + findings_summary(a, {{}, true}) + "\n";
  for (const Severity s : {Severity::error, Severity::caution, Severity::note}) {
    bool first = true;
    for (const Finding& f : a.findings()) {
      if (f.severity != s) continue;
      if (first)
        out += s == Severity::error     ? "\n### Errors\n\n"
               : s == Severity::caution ? "\n### Cautions\n\n"
                                        : "\n### Notes\n\n";
      first = false;
      out += "- **" + markdown_text(english(f.message)) + "** " + markdown_text(english(f.reason));
      const auto names = exercise_names(a, f.when);
      if (!f.when.always && !names.empty()) out += " In: " + markdown_text(english(Argument(names))) + ".";
      if (const auto fix = a.fix(f)) out += " Fix: " + markdown_text(english(fix->label)) + ".";
      if (f.accepted) out += " Accepted: " + markdown_text(f.accepted->reason);
      out += "\n";
    }
  }
  return out;
}

} // namespace snug
