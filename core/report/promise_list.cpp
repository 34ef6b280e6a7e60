#include "core/report/promise_list.h"

#include "core/model/promise_name.h"
#include "core/model/store.h"
#include "core/reach/explain.h"
#include "core/reach/promise_words.h"
#include "core/report/reach_step.h"
#include "core/text/base_text.h"
#include "core/text/promise_text.h"

#include <algorithm>

namespace snug {

namespace {

// Why a promise that something never arrives is kept: where its way ends.
Message why_kept(const Analysis& a, Reach& reach, const Promise& p, const Judged& j) {
  if (p.must == PromiseKind::never && j.answer.end) return step_message(a, *j.answer.end);
  return explain(a.index(), reach, j.question, j.answer);
}

ExerciseId exercise_at(const Lab& lab, std::size_t occasion) {
  return occasion == 0 ? ExerciseId{} : lab.exercises[occasion - 1].id;
}

// Never is kept too where nothing is sent that way.
Kept state_of(const Promise& p, const Judged& j) {
  if (!j.counts) return j.present && p.must == PromiseKind::never ? Kept::kept : Kept::not_judged;
  return j.kept ? Kept::kept : Kept::broken;
}

void judge_now(const Analysis& a, Reach& reach, const Promise& p, const Judged& j, PromiseLine& line) {
  if (!j.counts) {
    line.why = line.now == Kept::kept ? say(text::promise_no_way, subject_name(a.index(), p.from))
                                      : not_judged_reason(a.index(), reach, p);
    return;
  }
  line.decides = j.question;
  line.why = j.kept ? why_kept(a, reach, p, j) : broken_reason(a.index(), reach, p, j);
}

PromiseLine line_of(const Analysis& a, const Promise& p, ExerciseId shown) {
  PromiseLine line;
  line.id = p.id;
  line.says = say(text::promise_says, promise_name(a.lab(), p));
  line.why = say(text::promise_elsewhere);
  for (std::size_t i = 0; i < a.reach().occasions(); ++i) {
    Kept& kept = line.occasions.emplace_back(Kept::not_judged);
    const ExerciseId exercise = exercise_at(a.lab(), i);
    if (!speaks_of(p, exercise)) continue;
    Reach& reach = a.reach().at(i);
    const Judged j = judge(reach, a.index(), p);
    kept = state_of(p, j);
    if (exercise != shown) continue;
    line.now = kept;
    judge_now(a, reach, p, j, line);
  }
  return line;
}

} // namespace

std::vector<PromiseLine> promise_lines(const Analysis& a, ExerciseId shown) {
  std::vector<PromiseLine> out;
  for (const Promise& p : a.lab().promises) {
    out.push_back(line_of(a, p, shown));
    for (const Finding& f : a.findings())
      if (!f.places.empty() && f.places.front() == AnyId(p.id) && f.rule->topic == Topic::reach)
        out.back().finding = &f;
  }
  std::stable_partition(out.begin(), out.end(), [](const PromiseLine& l) { return l.now == Kept::broken; });
  return out;
}

Message occasions_text(const Lab& lab, const PromiseLine& line) {
  std::vector<Message> parts;
  for (const Kept k : {Kept::broken, Kept::kept, Kept::not_judged}) {
    std::vector<Message> names;
    for (std::size_t i = 0; i < line.occasions.size(); ++i)
      if (line.occasions[i] == k)
        names.push_back(i == 0 ? say(text::promise_all_on)
                               : say(text::plain, name_of(lab, lab.exercises[i - 1].id)));
    const Template& one = k == Kept::broken ? text::promise_broken_in
                          : k == Kept::kept ? text::promise_kept_in
                                            : text::promise_not_judged_in;
    const Template& all = k == Kept::broken ? text::promise_broken_everywhere
                          : k == Kept::kept ? text::promise_kept_everywhere
                                            : text::promise_judged_nowhere;
    if (names.size() == line.occasions.size()) return say(all);
    if (!names.empty()) parts.push_back(say(one, std::move(names)));
  }
  while (parts.size() > 1) {
    Message last = std::move(parts.back());
    parts.pop_back();
    parts.back() = say(text::promise_both, std::move(parts.back()), std::move(last));
  }
  return parts.empty() ? Message() : std::move(parts.front());
}

} // namespace snug
