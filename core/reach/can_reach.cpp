#include "core/reach/can_reach.h"

#include "core/model/store.h"
#include "core/reach/explain.h"
#include "core/text/reach_text.h"

#include <algorithm>

namespace snug {

namespace {

CanReach::State state_of(Reached verdict) {
  switch (verdict) {
  case Reached::reaches:
    return CanReach::State::yes;
  case Reached::one_way:
    return CanReach::State::one_way;
  case Reached::unreliable:
    return CanReach::State::chance;
  default:
    return CanReach::State::no;
  }
}

// The segment by which a way begins.
Message way_out(const Index& index, const ReachAnswer& a) {
  if (a.steps.empty() || a.steps.front().card.kind != Kind::card) return say(text::can_inside);
  const Card* card = index.card(CardId{a.steps.front().card.number});
  return card && card->segment ? say(text::can_by, name_of(index.lab(), card->segment))
                               : say(text::can_inside);
}

void take_answer(CanReach& line, Reach& reach, const Index& index, const Judged& j) {
  line.question = j.question;
  line.to = j.question.to;
  line.state = j.kept ? CanReach::State::yes : state_of(j.answer.verdict);
  line.words = line.state == CanReach::State::yes ? way_out(index, j.answer)
                                                  : explain(index, reach, j.question, j.answer);
}

bool gives_itself(const Index& index, Offerings& offerings, MachineId who, const Need& need) {
  if (need.from) return need.from == who;
  const auto& all = offerings.of(need.service);
  return std::find(all.begin(), all.end(), index.place(who)) != all.end();
}

} // namespace

std::vector<CanReach> can_reach(Reach& reach, const Index& index, MachineId who) {
  std::vector<CanReach> out;
  const std::uint32_t place = index.place(who);
  if (place == kNowhere) return out;
  Offerings offerings(index);
  const bool on = reach.network().nodes()[reach.network().node_of(who)].on;
  for (const Need& need : needs_of(index, place)) {
    if (gives_itself(index, offerings, who, need)) continue;
    CanReach& line = out.emplace_back();
    line.service = need.service;
    line.to = need.from;
    line.words = say(on ? text::can_nobody : text::can_off);
    if (const Judged j = judge(reach, index, offerings, who, need); j.counts)
      take_answer(line, reach, index, j);
  }
  CanReach& outside = out.emplace_back();
  outside.to = AnyId{Kind::outside, 0};
  outside.question.from = who;
  outside.question.to = outside.to;
  outside.words = say(text::can_off);
  if (!on) return out;
  Judged j;
  j.question = outside.question;
  j.answer = reach.ask(j.question);
  j.kept = j.answer.verdict == Reached::reaches;
  take_answer(outside, reach, index, j);
  return out;
}

} // namespace snug
