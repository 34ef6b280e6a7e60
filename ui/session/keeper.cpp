#include "ui/session/keeper.h"

#include "core/document/recovery.h"

namespace snug {

namespace {
constexpr int kLookEvery = 1000; // ms
}

Keeper::Keeper(QObject* parent) : QObject(parent) {
  clock_.start();
  timer_.setInterval(kLookEvery);
  connect(&timer_, &QTimer::timeout, this, [this] {
    if (journal_) judge(journal_->sync_if_due(now()));
  });
}

void Keeper::start(JournalHead head) {
  end();
  head_ = std::move(head);
}

void Keeper::go_on(RecoveredJournal&& journal, const Replayed& replayed, JournalHead head) {
  end();
  head_ = std::move(head);
  auto resumed = Journal::resume(std::move(journal), replayed, now());
  if (!resumed) return judge(tl::unexpected<Problem>(resumed.error()));
  journal_.emplace(std::move(*resumed));
  timer_.start();
}

void Keeper::edited(const Edit& edit, Recorded how) {
  if (folder_.empty()) return;
  if (!journal_) {
    auto begun = Journal::begin(folder_, head_, now());
    if (!begun) return judge(tl::unexpected<Problem>(begun.error()));
    journal_.emplace(std::move(*begun));
    timer_.start();
  }
  judge(journal_->edited(edit, how, now()));
}

void Keeper::undone(const Edit& step) {
  if (journal_) judge(journal_->undone(step, now()));
}

void Keeper::redone(const Edit& step) {
  if (journal_) judge(journal_->redone(step, now()));
}

void Keeper::will_save(const JournalBase& base) {
  if (journal_) judge(journal_->will_save(base, now()));
}

void Keeper::saved(JournalHead head) {
  head_ = std::move(head);
  if (journal_) judge(journal_->saved(head_, now()));
}

bool Keeper::keep_now() {
  if (!journal_) return false;
  auto synced = journal_->sync_if_due(now()); // writes what waits
  if (synced) synced = journal_->sync(now());
  judge(synced);
  return synced && !journal_->not_kept_since();
}

void Keeper::end() {
  timer_.stop();
  if (journal_) judge(std::move(*journal_).remove());
  journal_.reset();
}

void Keeper::judge(const Result<void>& result) {
  if (result) {
    if (std::exchange(troubled_, false)) emit well_again();
    return;
  }
  if (!std::exchange(troubled_, true)) emit trouble(result.error());
}

} // namespace snug
