#include "core/reach/promise_words.h"

#include "core/reach/explain.h"
#include "core/text/promise_text.h"

#include <algorithm>

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

namespace {

bool is_there(const ReachNetwork& n, const Index& index, AnyId id) {
  const std::uint32_t segment = id.kind == Kind::segment ? index.place(id) : kNowhere;
  const auto ports = n.ports();
  return std::any_of(n.nodes().begin(), n.nodes().end(), [&](const ReachNode& node) {
    if (!node.on) return false;
    if (id.kind == Kind::everyone) return node.id.kind == Kind::machine;
    if (id.kind != Kind::segment) return node.id == id;
    if (node.id.kind != Kind::machine && node.id.kind != Kind::pc) return false;
    return std::any_of(ports.begin() + node.first_port, ports.begin() + node.end_port,
                       [&](const ReachPort& p) { return p.segment == segment && p.piece != kNowhere; });
  });
}

// Machines that would be on a segment if a card were connected, or the machine were on.
std::vector<std::string> missing_on(const ReachNetwork& n, const Index& index, SegmentId segment, bool off) {
  std::vector<std::string> out;
  for (const Card& card : index.lab().cards) {
    const std::uint32_t node = n.node_of(card.machine);
    if (card.segment != segment || node == kNowhere) continue;
    if (off ? !n.nodes()[node].on : n.nodes()[node].on && !card.connected)
      out.push_back(subject_name(index, card.machine));
  }
  return out;
}

// Nothing: somebody is there.
std::optional<Message> absent(const ReachNetwork& n, const Index& index, AnyId id) {
  if (is_there(n, index, id)) return std::nullopt;
  if (id.kind == Kind::machine) return say(text::promise_off, subject_name(index, id));
  if (id.kind != Kind::segment) return say(text::promise_nobody_on);
  const SegmentId segment{id.number};
  const std::string name = subject_name(index, id);
  if (auto out = missing_on(n, index, segment, false); !out.empty())
    return say(text::promise_unplugged, name, std::move(out));
  if (auto off = missing_on(n, index, segment, true); !off.empty())
    return say(text::promise_all_off, name, std::move(off));
  return say(text::promise_no_card, name);
}

} // namespace

Message not_judged_reason(const Index& index, const Reach& reach, const Promise& p) {
  for (const AnyId end : {p.from, p.to})
    if (auto m = absent(reach.network(), index, end)) return *m;
  return say(text::promise_other_way, subject_name(index, p.from), subject_name(index, p.to));
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
