#pragma once
// The journal: what was done to a lab since it was last saved, line by line in a file of its own, so that a
// crash takes at most the step under way (DECISIONS 29; RELIABILITY 7). It never touches the document.

#include "core/document/append_file.h"
#include "core/document/journal_step.h"
#include "core/document/lock.h"
#include "core/edit/history.h"

#include <chrono>

namespace snug {

struct RecoveredJournal;
struct Replayed;

// One for each open lab. Tell it of every change right after it was made, in the order they were made. Each
// line is written at once, so it outlives the process; sync_if_due() forces it to the disk, so that a loss of
// power takes at most kSyncEvery of work. A Problem means that steps are not in the file yet: they wait in
// memory and go with the next call, as soon as the disk takes them. Nothing is ever lost by a Problem.
class Journal {
 public:
  // Of any clock that does not go back; the journal has none of its own.
  using Time = std::chrono::milliseconds;
  static constexpr Time kSyncEvery{5000};
  static constexpr std::size_t kMostWaiting = 64 * 1024 * 1024; // octets

  // Creates lab-UID-N.journal in `folder`, which is created where it is missing, for its owner only. Another
  // file is never overwritten. The history must be sealed or new.
  static Result<Journal> begin(const std::string& folder, const JournalHead& head, Time now);
  // Goes on in the journal that was recovered, behind the steps that were done again; what could not be read
  // or did not fit is cut off.
  static Result<Journal> resume(RecoveredJournal&& recovered, const Replayed& replayed, Time now);

  // After History::perform(lab, edit, …) gave true, or after a step was recorded: history.recorded().
  Result<void> edited(const Edit& edit, Recorded how, Time now);
  // After History::undo and redo of `step`.
  Result<void> undone(const Edit& step, Time now);
  Result<void> redone(const Edit& step, Time now);
  // Before a document is written, with what will be in it: should the program end in between, recovery knows
  // which of the two versions it finds.
  Result<void> will_save(const JournalBase& base, Time now);
  // After it was written: the journal begins anew with it, in a new file that takes the old one's name. Where
  // that fails the old one goes on, and recovery works as well. Seal the history (mark_clean does).
  Result<void> saved(const JournalHead& head, Time now);

  // To be called now and then, at least every kSyncEvery.
  Result<void> sync_if_due(Time now);
  Result<void> sync(Time now);

  // Since when steps wait in memory; nothing: all are in the file.
  std::optional<Time> not_kept_since() const { return not_kept_since_; }
  const std::string& path() const { return path_; }

  // Takes the file away: the lab was saved, or its person gave it up. Otherwise the file stays when the
  // object goes, to be found by find_journals().
  Result<void> remove() &&;

 private:
  Journal() = default;
  Result<void> keep(const JournalStep& step, Time now);
  Result<void> write_waiting(Time now);
  Result<void> place(std::string_view bytes);
  Result<void> rewrite();
  Problem not_kept(int error) const;

  std::string path_;
  std::optional<FileLock> lock_;
  detail::AppendFile file_;
  std::uint64_t lines_ = 0;           // written and waiting
  std::size_t done_ = 0, undone_ = 0; // steps of this journal that can be taken back and done again
  std::string waiting_;
  std::optional<Time> not_kept_since_;
  bool gap_ = false; // too much waited: only a new beginning helps
  bool unsynced_ = false;
  bool doubtful_ = false; // the system could not force it to the disk: what it holds is written anew
  Time last_sync_{0};
};

} // namespace snug
