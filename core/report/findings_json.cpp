#include "core/base/clean.h"
#include "core/edit/edit_json.h"
#include "core/model/json_text.h"
#include "core/report/findings_report.h"
#include "core/report/repairs.h"
#include "core/report/words.h"

namespace snug {

namespace {

struct Writer {
  const Analysis& a;
  const Repairs& repairs;
  std::string out{};

  void key(std::string_view k) {
    append_json_string(out, k);
    out += ": ";
  }
  void text(std::string_view k, std::string_view v) {
    key(k);
    append_json_string(out, clean(v));
  }
  void number(std::string_view k, std::int64_t v) {
    key(k);
    out += std::to_string(v);
  }
  void place(AnyId id) {
    out += '{';
    text("id", to_text(id));
    out += ", ";
    text("name", name_of(a.lab(), id));
    out += '}';
  }
  void budget(AnyId of, std::string_view kind, std::string_view unit, std::array<std::int64_t, 3> numbers,
              std::string_view verdict);
  void budgets(const ExerciseBudgets& b);
  void finding(const Finding& f);
  void fixes(const Finding& f);
  void fix(std::string_view k, const Fix* repair);
};

void Writer::budget(AnyId of, std::string_view kind, std::string_view unit,
                    std::array<std::int64_t, 3> numbers, std::string_view verdict) {
  out += out.back() == '[' ? "\n    {" : ",\n    {";
  key("of");
  place(of);
  out += ", ";
  text("kind", kind);
  out += ", ";
  text("unit", unit);
  out += ", ";
  number("budget", numbers[0]);
  out += ", ";
  number("taken", numbers[1]);
  out += ", ";
  number("headroom", numbers[2]);
  out += ", ";
  text("verdict", verdict);
  out += '}';
}

void Writer::budgets(const ExerciseBudgets& b) {
  key("budgets");
  out += '[';
  for (const MemoryBudget& m : b.memory)
    budget(m.of, "memory", "MiB", {m.budget, m.taken, m.headroom()}, word(m.verdict()));
  for (const ProcessorBudget& p : b.processors) {
    const std::int64_t allowed = p.power * p.limit / 10'000;
    budget(p.of, "processors", "virtual processors", {allowed, p.running, allowed - p.running},
           word(p.verdict()));
  }
  for (const DiskBudget& d : b.disks)
    budget(d.of, "disk", "MiB", {d.budget, d.expected, d.budget - d.expected}, word(d.verdict()));
  for (const SegmentBudget& s : b.segments)
    budget(s.of, "addresses", "addresses", {s.usable, s.used + s.reserved, s.free()}, word(s.verdict()));
  out += out.back() == '[' ? "]" : "\n  ]";
}

void Writer::fixes(const Finding& f) {
  const std::vector<Fix>& list = repairs.of(f);
  fix("fix", list.empty() ? nullptr : &list[0]);
  out += ", ";
  fix("other_fix", list.size() < 2 ? nullptr : &list[1]);
}

void Writer::fix(std::string_view k, const Fix* repair) {
  key(k);
  if (!repair) {
    out += "null";
    return;
  }
  out += '{';
  text("label", english(repair->label));
  out += ", ";
  key("edits");
  append_steps(out, repair->edit);
  out += '}';
}

void Writer::finding(const Finding& f) {
  out += out.back() == '[' ? "\n    {" : ",\n    {";
  text("id", f.rule->id);
  out += ", ";
  text("severity", word(f.severity));
  out += ", ";
  text("message", english(f.message));
  out += ", ";
  text("reason", english(f.reason));
  out += ", ";
  key("places");
  out += '[';
  for (std::size_t i = 0; i < f.places.size(); ++i) {
    if (i > 0) out += ", ";
    place(f.places[i]);
  }
  out += "], ";
  key("exercises");
  out += '[';
  bool first = true;
  for (std::size_t i = 0; i < a.lab().exercises.size(); ++i) {
    if (!f.when.always && !f.when.exercises[i]) continue;
    out += first ? "" : ", ";
    first = false;
    append_json_string(out, to_text(a.lab().exercises[i].id));
  }
  out += "], ";
  key("accepted");
  out += f.accepted ? "true" : "false";
  out += ", ";
  fixes(f);
  out += '}';
}

} // namespace

namespace {

void append_occasion(std::string& out, const Analysis& a, const Repairs& repairs, ExerciseId exercise) {
  Writer w{a, repairs, std::move(out)};
  w.out += "{\n  ";
  w.text("lab", a.lab().facts.title);
  w.out += ",\n  ";
  w.key("exercise");
  if (exercise) {
    w.place(exercise);
  } else {
    w.out += "null";
  }
  w.out += ",\n  ";
  w.budgets(a.budgets(exercise));
  w.out += ",\n  ";
  w.key("findings");
  w.out += '[';
  for (const Finding& f : a.findings())
    if (holds_in(a.lab(), f, exercise)) w.finding(f);
  w.out += w.out.back() == '[' ? "]\n}" : "\n  ]\n}";
  out = std::move(w.out);
}

} // namespace

std::string findings_json(const Analysis& a, const ReportChoice& choice) {
  std::string out;
  const Repairs repairs(a, choice);
  if (!choice.every_exercise) {
    append_occasion(out, a, repairs, choice.exercise);
    return out + "\n";
  }
  out += '[';
  for (const ExerciseBudgets& b : a.budgets()) {
    if (out.size() > 1) out += ",\n";
    append_occasion(out, a, repairs, b.exercise);
  }
  return out + "]\n";
}

} // namespace snug
