#include "core/report/findings_report.h"

#include "core/base/clean.h"
#include "core/budget/memory.h"
#include "core/model/json_text.h"
#include "core/report/escape.h"
#include "core/report/repairs.h"
#include "core/report/tables.h"
#include "core/report/words.h"

#include <algorithm>

namespace snug {

namespace {

std::string verdict_text(const MemoryBudget& b) {
  const std::string left =
      b.headroom() < 0 ? "over by " + show_mib(-b.headroom()) : show_mib(b.headroom()) + " left";
  return std::string(word(b.verdict())) + ", takes " + show_mib(b.taken) + " of " + show_mib(b.budget) +
         ", " + left;
}

std::vector<std::string> exercise_names(const Analysis& a, const Occasions& when) {
  std::vector<std::string> names;
  if (when.everything_on) names.emplace_back("everything on");
  for (std::size_t i = 0; i < a.lab().exercises.size() && i < when.exercises.size(); ++i)
    if (when.exercises[i]) names.push_back(name_of(a.lab(), a.lab().exercises[i].id));
  return names;
}

// With a full stop at its end.
std::string with_stop(std::string text) { return text.empty() || text.back() == '.' ? text : text + "."; }

// What to type into the document: "m5 "expose_virtualization": true".
std::vector<std::string> steps_in_the_file(const Edit& edit) {
  std::vector<std::string> out;
  for (const Primitive& p : edit.steps) {
    std::string line;
    if (const auto* s = std::get_if<SetField>(&p)) {
      if (s->field->owner == Owner::program) continue;
      line = to_text(s->id) + "  \"" + std::string(s->field->key) + "\": ";
      append_json_value(line, *s->field, s->after);
    } else if (const auto* i = std::get_if<InsertElement>(&p)) {
      line = std::string(info_of(kind_of(*i->element)).collection) + "  add ";
      append_json_object(line, info_of(kind_of(*i->element)), object_of(*i->element));
    } else if (const auto* r = std::get_if<RemoveElement>(&p)) {
      line = to_text(id_of(*r->element)) + "  remove it";
    }
    if (!line.empty()) out.push_back(std::move(line));
  }
  return out;
}

std::string finding_text(const Analysis& a, const Finding& f, const Repairs& repairs, bool with_exercises) {
  std::string out = std::string(word(f.severity)) + ": " + clean(english(f.message)) + "\n";
  if (!f.reason.empty()) out += "    " + clean(sentence(f.reason)) + "\n";
  if (with_exercises && !f.when.always) {
    const auto names = exercise_names(a, f.when);
    if (!names.empty()) out += "    in: " + clean(english(Argument(names))) + "\n";
  }
  std::string_view lead = "    fix: ";
  for (const Fix& fix : repairs.of(f)) {
    out += std::string(lead) + clean(english(fix.label)) + "\n";
    for (const std::string& step : steps_in_the_file(fix.edit)) out += "         " + clean(step) + "\n";
    lead = "     or: ";
  }
  if (f.accepted) out += "    accepted: " + clean(f.accepted->reason) + "\n";
  return out + "    [" + std::string(f.rule->id) + "]\n";
}

// Addresses of a segment, and what runs on it.
std::string segment_text(const Analysis& a, std::uint32_t segment, const SegmentBudget& b) {
  const std::string memory = b.memory > 0 ? "; machines on it take " + show_mib(b.memory) : "";
  const auto prefix = a.addresses().prefix4(segment);
  if (!prefix) return "addresses: no IPv4 prefix" + memory;
  const std::string pool = range_text(a, segment);
  return "addresses: " + std::string(word(b.verdict())) + ", " + std::to_string(b.used) + " used, " +
         std::to_string(b.reserved) + " reserved, " + std::to_string(b.free()) + " free, " +
         (b.wanted > 0 ? std::to_string(b.wanted) + " more wanted, " : "") + "of " +
         std::to_string(b.usable) + " in " + to_text(*prefix) +
         (pool.empty() ? "" : "; DHCP gives out " + pool) + memory;
}

std::string exercise_title(const Lab& lab, ExerciseId id) { return id ? name_of(lab, id) : "everything on"; }

void append_budgets(std::string& out, const Analysis& a, const ExerciseBudgets& b) {
  const Lab& lab = a.lab();
  const auto line = [&](AnyId of, const std::string& text) {
    out += "    " + clean(name_of(lab, of)) + ", " + text + "\n";
  };
  for (const MemoryBudget& m : b.memory) {
    if (m.of.kind == Kind::machine && m.taken == 0) continue;
    const std::int64_t room = room_for_guest(a.index(), m);
    line(m.of, "memory: " + verdict_text(m) + (room > 0 ? ", room for a guest of " + show_mib(room) : ""));
  }
  for (const ProcessorBudget& p : b.processors)
    if (p.running > 0)
      line(p.of, "processors: " + std::string(p.verdict() == Verdict::over ? "many" : "fit") + ", " +
                     std::to_string(p.running) + " virtual run, " + english(Argument(Hundredths{p.ratio})) +
                     " for each " + (p.of.kind == Kind::pc ? "core" : "processor") + ", " +
                     english(Argument(Hundredths{p.limit})) + " are advised");
  for (const DiskBudget& d : b.disks)
    line(d.of, "disk: " + std::string(word(d.verdict())) + ", " + show_mib(d.expected) + " expected, " +
                   show_mib(d.worst) + " at worst, of " + show_mib(d.budget));
  for (std::uint32_t i = 0; i < b.segments.size(); ++i)
    line(b.segments[i].of, segment_text(a, i, b.segments[i]));
}

// That `check` without --all is not the whole story. Errors that stand whatever is on are shown anyway.
std::string other_exercises(const Analysis& a, const ReportChoice& choice) {
  if (choice.every_exercise) return {};
  std::vector<std::string> bad;
  for (std::size_t i = 0; i < a.lab().exercises.size(); ++i) {
    const auto own = [i](const Finding& f) {
      return f.severity == Severity::error && !f.accepted && !f.when.always && f.when.exercises[i];
    };
    if (a.lab().exercises[i].id != choice.exercise &&
        std::any_of(a.findings().begin(), a.findings().end(), own))
      bad.push_back(name_of(a.lab(), a.lab().exercises[i].id));
  }
  return bad.empty() ? std::string()
                     : "More errors in " + clean(english(Argument(bad))) + ": --all shows them.\n";
}

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
  std::string out = clean(lab.facts.title.empty() ? "Lab without title" : lab.facts.title) + "\n\n";
  for (const ExerciseBudgets& b : a.budgets()) {
    if (!choice.every_exercise && b.exercise != choice.exercise) continue;
    out += clean(exercise_title(lab, b.exercise)) + "\n";
    append_budgets(out, a, b);
  }
  out += "\n" + findings_summary(a, choice) + "\n" + other_exercises(a, choice);
  const Repairs repairs(a, choice);
  for (const Finding& f : a.findings())
    if (shown(a, f, choice)) out += "\n" + finding_text(a, f, repairs, choice.every_exercise);
  return out;
}

std::string findings_markdown(const Analysis& a) {
  const Lab& lab = a.lab();
  const Repairs repairs(a, {{}, true});
  std::string out =
      "# " + markdown_text(lab.facts.title.empty() ? "Lab without title" : lab.facts.title) + "\n\n";
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
      out += "- **" + markdown_text(english(f.message)) + "** (" + markdown_text(f.rule->id) + ")  \n  " +
             markdown_text(with_stop(sentence(f.reason)));
      const auto names = exercise_names(a, f.when);
      if (!f.when.always && !names.empty())
        out += "  \n  In: " + markdown_text(english(Argument(names))) + ".";
      std::string_view lead = "  \n  Fix: ";
      for (const Fix& fix : repairs.of(f)) {
        out += std::string(lead) + markdown_text(english(fix.label));
        lead = "; or: ";
      }
      if (lead.front() == ';') out += ".";
      if (f.accepted) out += "  \n  Accepted: " + markdown_text(f.accepted->reason);
      out += "\n";
    }
  }
  return out;
}

} // namespace snug
