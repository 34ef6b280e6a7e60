#pragma once
// Keeps the journal of one session, so that a crash loses nothing (DECISIONS 29).

#include "core/document/journal.h"

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

#include <optional>

namespace snug {

class Keeper : public QObject {
  Q_OBJECT

 public:
  explicit Keeper(QObject* parent = nullptr);

  // Where journals are kept; empty (as at first): none is.
  void set_folder(std::string folder) { folder_ = std::move(folder); }
  const std::string& folder() const { return folder_; }

  // Another lab: what was kept is taken away. A journal begins with the first step.
  void start(JournalHead head);
  // A lab that was recovered goes on in its journal.
  void go_on(RecoveredJournal&& journal, const Replayed& replayed, JournalHead head);
  void edited(const Edit& edit, Recorded how);
  void undone(const Edit& step);
  void redone(const Edit& step);
  void will_save(const JournalBase& base);
  void saved(JournalHead head);
  // Forces every step to the disk; false: some wait in memory only, or nothing is kept.
  bool keep_now();
  // The person is done with it: saved or given up.
  void end();

 signals:
  void trouble(const snug::Problem& problem); // once until it is well again
  void well_again();

 private:
  Journal::Time now() const { return Journal::Time(clock_.elapsed()); }
  void judge(const Result<void>& result);

  std::string folder_;
  JournalHead head_;
  std::optional<Journal> journal_;
  QElapsedTimer clock_;
  QTimer timer_;
  bool troubled_ = false;
};

} // namespace snug
