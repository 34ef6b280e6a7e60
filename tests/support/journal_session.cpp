#include "tests/support/journal_session.h"

#include "core/document/save.h"
#include "core/document/write.h"

#include <gtest/gtest.h>

namespace snug::test {

JournalHead head_of(const Lab& lab, const std::string& document) {
  return {"Snuglab test", lab.facts.uid, journal_base(document, write_lab(lab))};
}

void JournalSession::tell(Result<void> said) {
  if (!said) problem = said.error();
}

bool JournalSession::edit(const Edit& e, bool merge) {
  const auto done = history.perform(lab, e, merge);
  if (!done || !*done) return false;
  joins += history.recorded() != Recorded::step;
  if (journal_) tell(journal_->edited(e, history.recorded(), now_));
  told();
  return true;
}

// One field, value after value, as a person types; sometimes back to where it began.
void JournalSession::type() {
  const Store& store = store_of(Kind::machine);
  if (lab.machines.empty()) return;
  const AnyId id = lab.machines[random_.below(lab.machines.size())].id;
  const FieldInfo* field = store.table->field(random_.chance(50) ? "memory" : "notes");
  const Value first = field->get(object_at(std::as_const(lab), id));
  history.seal();
  for (int i = 0; i < 3; ++i) edit(set_field(lab, id, field->key, random_value(random_, lab, *field)), true);
  if (random_.chance(30)) edit(set_field(lab, id, field->key, first), true);
}

void JournalSession::save() {
  if (document_.empty()) return;
  const std::string bytes = write_lab(lab);
  if (journal_) tell(journal_->will_save(journal_base(document_, bytes), now_));
  if (journal_ && !save_file(document_, bytes)) return;
  ++saves;
  history.mark_clean();
  if (journal_) tell(journal_->saved(head_of(lab, document_), now_));
}

bool JournalSession::act(Journal* journal, Journal::Time now) {
  journal_ = journal;
  now_ = now;
  problem.reset();
  const std::size_t what = random_.below(100);
  if (what < 55) {
    edit(random_edit(random_, lab), false);
  } else if (what < 70) {
    type();
  } else if (what < 84 && history.can_undo()) {
    const Edit step = *history.undo_step();
    history.undo(lab);
    if (journal_) tell(journal_->undone(step, now_));
    told();
  } else if (what < 95 && history.can_redo()) {
    const Edit step = *history.redo_step();
    history.redo(lab);
    if (journal_) tell(journal_->redone(step, now_));
    told();
  } else if (what >= 95) {
    save();
  }
  if (journal_ && !problem) tell(journal_->sync_if_due(now_));
  return !problem;
}

void take_back(const std::string& folder, std::optional<RecoveredJournal>& recovered, Replayed& back) {
  const auto found = find_journals(folder);
  if (found.empty()) return;
  ASSERT_EQ(found.size(), 1U);
  auto read = recover(found[0].path);
  ASSERT_TRUE(read) << english(read.error());
  if (read->damage) {
    ASSERT_EQ(read->damage->message.id(), "journal-torn") << english(*read->damage);
  }
  auto replayed = replay(*read);
  ASSERT_TRUE(replayed) << english(replayed.error());
  ASSERT_FALSE(replayed->stopped) << english(*replayed->stopped);
  recovered = std::move(*read);
  back = std::move(*replayed);
}

} // namespace snug::test
