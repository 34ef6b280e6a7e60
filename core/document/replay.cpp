// replay(): what a journal holds, done again.

#include "core/document/read.h"
#include "core/document/recovery.h"
#include "core/text/document_text.h"
#include "core/text/journal_text.h"

#include <new>

namespace snug {

namespace {

using What = JournalStep::What;

// Performs as one step of its own, or as part of the one before.
Result<void> perform(Replayed& r, const Edit& e, bool joins) {
  if (!joins) r.history.seal();
  const auto changed = r.history.perform(r.lab, e, true);
  if (!changed) return fail(changed.error());
  const bool joined = r.history.recorded() != Recorded::step;
  if (!*changed || joined != joins) return fail(text::journal_stack);
  return {};
}

// The history that the document was left with: goes back to where it begins, and forth again.
Result<void> enter(Replayed& r, const detail::StepStacks& stacks) {
  for (std::size_t i = stacks.done.size(); i-- > 0;)
    if (auto back = apply(r.lab, inverse(stacks.done[i])); !back) return fail(std::move(back.error()));
  for (const Edit& e : stacks.done)
    if (auto forth = perform(r, e, false); !forth) return forth;
  for (std::size_t i = stacks.undone.size(); i-- > 0;)
    if (auto forth = perform(r, stacks.undone[i], false); !forth) return forth;
  for (std::size_t i = 0; i < stacks.undone.size(); ++i) {
    if (!r.history.can_undo()) return fail(text::journal_stack); // more than a history keeps
    r.history.undo(r.lab);
  }
  r.history.mark_clean();
  return {};
}

Result<void> again(Replayed& r, const JournalStep& s) {
  if (s.what == What::saved) return {};
  ++r.again;
  if (s.what == What::edit) return perform(r, *s.edit, s.joins);
  const bool undo = s.what == What::undo;
  const Edit* next = undo ? r.history.undo_step() : r.history.redo_step();
  if (!next || (s.edit && s.edit->steps != next->steps)) return fail(text::journal_stack);
  if (undo) {
    r.history.undo(r.lab);
  } else {
    r.history.redo(r.lab);
  }
  return {};
}

detail::StepStacks stacks_at(const RecoveredJournal& j, std::size_t from) {
  detail::StepStacks stacks = detail::StepStacks::before(j.steps);
  for (std::size_t i = 0; i < from; ++i) {
    JournalStep s = j.steps[i];
    if (s.what != What::edit) s.edit.reset(); // those stand in the stacks already
    stacks.take(s);
  }
  return stacks;
}

Problem at_step(const Problem& p, const RecoveredJournal& j, std::size_t i) {
  const Count n{static_cast<std::int64_t>(i + 1)};
  return Problem{say(text::journal_step, n, p.message), j.path, static_cast<int>(i + 2), 0, {}};
}

// A place where the steps can begin.
struct Beginning {
  std::size_t from = 0;
  const JournalBase* base = nullptr;
};

std::vector<Beginning> beginnings(const RecoveredJournal& j) {
  std::vector<Beginning> out;
  for (std::size_t i = j.steps.size(); i > 0; --i)
    if (j.steps[i - 1].what == What::saved) out.push_back({i, &j.steps[i - 1].saved});
  out.push_back({0, &j.head.base});
  return out;
}

Result<std::string> bytes_of(const JournalBase& base) {
  if (base.document.empty()) return base.bytes;
  auto bytes = read_file(base.document);
  if (!bytes)
    return fail(text::journal_base_gone, base.document, bytes.error().message,
                Count{static_cast<std::int64_t>(base.size)}, hash_text(base.hash));
  const std::uint64_t hash = content_hash(*bytes);
  if (bytes->size() != base.size || hash != base.hash)
    return fail(text::journal_base_changed, base.document, Count{static_cast<std::int64_t>(base.size)},
                hash_text(base.hash), Count{static_cast<std::int64_t>(bytes->size())}, hash_text(hash));
  return bytes;
}

Result<Replayed> replay_any(const RecoveredJournal& j) {
  for (const Beginning& b : beginnings(j)) {
    auto bytes = bytes_of(*b.base);
    if (!bytes && b.from > 0) continue; // that one was not written
    if (!bytes) {
      bytes.error().file = j.path;
      return fail(std::move(bytes.error()));
    }
    auto lab = read_lab(*bytes, b.base->document);
    if (!lab) return fail(std::move(lab.error()));
    auto done = replay(j, b.from, std::move(*lab));
    if (done) done->base = *b.base;
    return done;
  }
  return fail(text::journal_foreign);
}

} // namespace

Result<Replayed> replay(const RecoveredJournal& j, std::size_t from, Lab base) {
  Replayed r;
  r.lab = std::move(base);
  if (auto entered = enter(r, stacks_at(j, from)); !entered) return fail(at_step(entered.error(), j, from));
  for (r.used = from; r.used < j.steps.size(); ++r.used)
    if (auto done = again(r, j.steps[r.used]); !done) {
      r.stopped = at_step(done.error(), j, r.used);
      --r.again;
      break;
    }
  return r;
}

Result<Replayed> replay(const RecoveredJournal& j) {
  try {
    return replay_any(j);
  } catch (const std::bad_alloc&) {
    return fail(Problem{say(text::document_memory), j.path, 0, 0, {}});
  }
}

} // namespace snug
