#include "core/gesture/promise.h"

#include "core/text/gesture_text.h"

#include <algorithm>

namespace snug {

namespace {

bool is_subject(AnyId id) {
  return id.kind == Kind::machine || id.kind == Kind::outside || id.kind == Kind::everyone;
}

Promise promise_of(const ReachQuestion& q, ExerciseId current) {
  Promise p;
  p.from = q.from;
  p.to = q.to;
  p.transport = q.transport;
  p.port = q.transport == Transport::icmp ? 0 : q.port;
  if (current) p.exercises.push_back(current);
  return p;
}

bool same_statement(const Promise& a, const Promise& b) {
  return a.from == b.from && a.to == b.to && a.must == b.must && a.transport == b.transport &&
         a.port == b.port && a.exercises == b.exercises;
}

bool is_promised(const Lab& lab, const Promise& p) {
  return std::any_of(lab.promises.begin(), lab.promises.end(),
                     [&p](const Promise& other) { return same_statement(other, p); });
}

Added added(const Lab& lab, Promise p) {
  EditBuilder edit(lab);
  const PromiseId id = edit.add(std::move(p));
  const std::string name = name_of(edit.lab(), id);
  return {std::move(edit).take(say(text::gesture_promise, name)), id};
}

} // namespace

Result<Added> promise_that(const Lab& lab, const ReachQuestion& q, Reached verdict, ExerciseId current) {
  if (!is_subject(q.from) || !is_subject(q.to)) return fail(text::gesture_no_subject);
  if (q.from == q.to) return fail(text::gesture_one_subject);
  if (q.full_size) return fail(text::gesture_small_only);
  Promise p = promise_of(q, current);
  p.must = verdict == Reached::does_not_reach ? PromiseKind::never : PromiseKind::reach;
  if (is_promised(lab, p)) return fail(text::gesture_promised);
  return added(lab, std::move(p));
}

Result<Added> add_promise(const Lab& lab, const ReachQuestion& q, ExerciseId current) {
  Promise p = promise_of(q, current);
  if (is_promised(lab, p)) return fail(text::gesture_promised);
  if (!is_subject(p.from)) p.from = {Kind::everyone, 0};
  if (!is_subject(p.to) || p.to == p.from) p.to = {Kind::outside, 0};
  if (p.to == p.from) p.from = {Kind::everyone, 0};
  return added(lab, std::move(p));
}

Edit remove_promise(const Lab& lab, PromiseId id) {
  Edit edit = remove_elements(lab, std::vector<AnyId>{id});
  edit.label = say(text::gesture_promise_gone, name_of(lab, id));
  return edit;
}

Result<Edit> change_promises(const Lab& lab, std::span<const AnyId> ids, const FieldInfo& field,
                             const Value& value) {
  EditBuilder edit(lab);
  for (const AnyId id : ids) {
    edit.set(id, field.key, value);
    const Promise& p = *find<Promise>(edit.lab(), PromiseId{id.number});
    if (p.from == p.to && p.from.kind != Kind::segment && p.from.kind != Kind::everyone)
      return fail(text::gesture_one_subject);
    if (p.transport != Transport::icmp || p.port == 0) continue;
    if (field.key == "transport")
      edit.set(id, "port", Value(std::int64_t{0}));
    else
      edit.set(id, "transport", Value(std::string(word(Transport::tcp))));
  }
  const Argument name =
      ids.size() == 1
          ? Argument(name_of(lab, ids.front()))
          : detail::argument(say(text::gesture_promises, Count{static_cast<std::int64_t>(ids.size())}));
  return std::move(edit).take(say(text::gesture_promise_changed, name));
}

} // namespace snug
