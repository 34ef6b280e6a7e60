#include "core/reach/promise_words.h"

#include "core/reach/explain.h"
#include "core/text/promise_text.h"

namespace snug {

namespace {

// " on tcp 443"; nothing for any packet at all.
std::string by_service(const Promise& p) {
  if (p.transport == Transport::icmp || p.port == 0) return {};
  return english(say(text::by_service, word(p.transport), std::to_string(p.port)));
}

} // namespace

std::string subject_name(const Index& index, AnyId id) {
  const Machine* m = id.kind == Kind::machine ? index.machine(MachineId{id.number}) : nullptr;
  return m && !m->name.empty() ? m->name : subject_name(index.lab(), id);
}

std::vector<std::string> way_there(const Index& index, const Judged& j) {
  std::vector<std::string> out{subject_name(index, j.question.from)};
  for (const ReachStep& s : j.answer.steps)
    if (!s.back && s.what == Decision::forwards) out.push_back(subject_name(index, s.node));
  out.push_back(subject_name(index, j.question.to));
  return out;
}

Message broken_message(const Index& index, const Promise& p, const Judged& j) {
  const bool never = p.must == PromiseKind::never;
  const Template& t =
      never ? j.answer.verdict == Reached::one_way ? text::isolation_one_way : text::isolation_broken
      : j.answer.verdict == Reached::unreliable ? text::promise_chance
                                                : text::promise_broken;
  return say(t, subject_name(index, j.question.from), subject_name(index, j.question.to), by_service(p));
}

Message broken_reason(const Index& index, const Reach& reach, const Promise& p, const Judged& j) {
  if (p.must == PromiseKind::never) return say(text::isolation_why, way_there(index, j));
  return explain(index, reach, j.question, j.answer);
}

} // namespace snug
