#include "core/report/reach_report.h"

#include "core/base/clean.h"
#include "core/model/json_text.h"
#include "core/model/store.h"
#include "core/reach/explain.h"
#include "core/reach/pairs.h"
#include "core/report/reach_step.h"
#include "core/text/reach_text.h"

#include <algorithm>

namespace snug {

namespace {

std::string service_of(const ReachQuestion& q) {
  std::string out(word(q.transport));
  if (q.port != 0) out += "/" + std::to_string(q.port);
  return out;
}

class Json {
 public:
  explicit Json(const Lab& lab) : lab_(lab) {}
  void text(std::string_view k, std::string_view v) {
    key(k);
    append_json_string(out_, clean(v));
    first_ = false;
  }
  void flag(std::string_view k, bool v) {
    key(k);
    out_ += v ? "true" : "false";
    first_ = false;
  }
  void number(std::string_view k, std::int64_t v) {
    key(k);
    out_ += std::to_string(v);
    first_ = false;
  }
  void node(std::string_view k, AnyId id) {
    key(k);
    if (!id) {
      out_ += "null";
      first_ = false;
      return;
    }
    const bool card = id.kind == Kind::card;
    open('{');
    text("id", to_text(id));
    text("name", card ? name_of(lab_, id) : reach_name(lab_, id));
    close('}');
  }
  void key(std::string_view k) {
    comma();
    append_json_string(out_, k);
    out_ += ": ";
    first_ = true;
  }
  void open(char c) {
    if (out_.empty() || out_.back() != ' ') comma();
    out_ += c;
    first_ = true;
  }
  void close(char c) {
    out_ += c;
    first_ = false;
  }
  std::string take() { return std::move(out_) + "\n"; }

 private:
  void comma() {
    if (!first_) out_ += ", ";
    first_ = false;
  }
  const Lab& lab_;
  std::string out_;
  bool first_ = true;
};

std::string exercise_name(const Lab& lab, ExerciseId e) { return e ? name_of(lab, e) : std::string(); }

} // namespace

std::string reach_text(const Analysis& a, ExerciseId exercise, const ReachQuestion& q,
                       const ReachAnswer& answer) {
  std::string out = clean(english(explain(a.index(), a.reach(exercise), q, answer))) + "\n";
  bool back = false;
  for (const ReachStep& s : answer.steps) {
    if (s.back && !back) out += "  " + english(say(text::step_back)) + "\n";
    back = s.back;
    const std::string line = english(step_message(a, s));
    out += "  " + clean(ends(s.what) ? english(say(text::step_ends, line)) : line) + "\n";
  }
  return out;
}

std::string reach_json(const Analysis& a, ExerciseId exercise, const ReachQuestion& q,
                       const ReachAnswer& answer) {
  Json j(a.lab());
  j.open('{');
  j.text("lab", a.lab().facts.title);
  if (exercise)
    j.text("exercise", exercise_name(a.lab(), exercise));
  else
    j.node("exercise", {}); // everything on
  j.node("from", q.from);
  j.node("to", q.to);
  j.text("service", service_of(q));
  j.flag("full_size", q.full_size);
  j.text("verdict", word(answer.verdict));
  j.text("address", answer.target ? to_text(*answer.target) : std::string());
  j.text("message", english(explain(a.index(), a.reach(exercise), q, answer)));
  const auto step = [&j](const ReachStep& s) {
    j.open('{');
    j.node("node", s.node);
    j.node("card", s.card);
    j.text("decision", word(s.what));
    j.text("address", to_text(s.address));
    if (s.service > 0) j.number("port", s.service);
    j.flag("back", s.back);
    j.close('}');
  };
  if (answer.end) {
    j.key("end");
    step(*answer.end);
  } else {
    j.node("end", {});
  }
  j.key("hops");
  j.open('[');
  for (const ReachStep& s : answer.steps) step(s);
  j.close(']');
  j.close('}');
  return j.take();
}

Table reach_table(const Analysis& a, ExerciseId exercise, const ReachQuestion& shape) {
  Table t;
  t.title = a.lab().facts.title;
  t.columns = {
      {"from_id", "From"}, {"from", "Name"}, {"to_id", "To"}, {"to", "Name"}, {"verdict", "Verdict"}};
  Reach& reach = a.reach(exercise);
  const ReachPairs pairs(reach, shape);
  const auto nodes = reach.network().nodes();
  const auto is_system = [](AnyId id) { return id.kind == Kind::machine || id.kind == Kind::pc; };
  for (std::uint32_t f = 0; f < nodes.size(); ++f)
    for (std::uint32_t to = 0; to < nodes.size(); ++to) {
      const AnyId from = nodes[f].id, target = nodes[to].id;
      if (f == to || !is_system(from) || !(is_system(target) || target.kind == Kind::outside)) continue;
      if (!nodes[f].on || !nodes[to].on) continue;
      t.rows.push_back({from,
                        {to_text(from), reach_name(a.lab(), from), to_text(target),
                         reach_name(a.lab(), target), std::string(word(pairs.verdict(f, to)))}});
    }
  return t;
}

Table what_if_table(const Analysis& a, ExerciseId exercise, std::span<const AnyId> off, const WhatIf& w) {
  Table t;
  std::vector<std::string> names;
  for (const AnyId id : off) names.push_back(name_of(a.lab(), id));
  t.title = english(
      say(exercise ? text::what_if_title_in : text::what_if_title, names, exercise_name(a.lab(), exercise)));
  t.columns = {{"fails", "Fails"}, {"who", "Who"}, {"what", "What"}, {"of", "Of"}};
  const auto row = [&](AnyId place, const Template& kind, std::string who, std::string what, std::string of) {
    t.rows.push_back({place, {english(say(kind)), std::move(who), std::move(what), std::move(of)}});
  };
  for (const MachineId m : w.off) row(m, text::fails_off, name_of(a.lab(), m), "", "");
  for (const PromiseId p : w.promises) {
    const auto& list = a.lab().promises;
    const auto it = std::find_if(list.begin(), list.end(), [&](const Promise& x) { return x.id == p; });
    ReachQuestion q;
    q.transport = it->transport;
    q.port = it->port;
    const std::string what =
        it->must == PromiseKind::never ? english(say(text::fails_never, service_of(q))) : service_of(q);
    row(p, text::fails_promise, subject_name(a.lab(), it->from), what, subject_name(a.lab(), it->to));
  }
  for (const LostNeed& n : w.needs)
    row(n.who, n.must ? text::fails_must : text::fails_need, name_of(a.lab(), n.who), n.service,
        n.from ? reach_name(a.lab(), n.from) : "");
  for (const LostPair& p : w.pairs)
    row(p.from, text::fails_pair, reach_name(a.lab(), p.from), std::string(word(p.after)),
        reach_name(a.lab(), p.to));
  return t;
}

bool breaks_promise(const Analysis& a, ExerciseId exercise) {
  return std::any_of(a.findings().begin(), a.findings().end(), [&](const Finding& f) {
    const bool promise = f.rule->id == "promise-broken" || f.rule->id == "isolation-broken";
    return promise && !f.accepted && holds_in(a.lab(), f, exercise);
  });
}

} // namespace snug
