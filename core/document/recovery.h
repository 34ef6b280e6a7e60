#pragma once
// Finding and reading journals that programs left behind, and doing again what they hold. The documents are
// only read.

#include "core/document/journal.h"

#include <vector>

namespace snug {

struct FoundJournal {
  std::string path;
  std::chrono::sys_seconds changed; // when it was last written
};
// Journals in the folder that no running program holds, the last written first; none where there is no such
// folder. What killed programs left beside journals that are gone is taken away.
std::vector<FoundJournal> find_journals(const std::string& folder);

struct RecoveredJournal {
  std::string path;
  JournalHead head;
  std::vector<JournalStep> steps;  // up to the first line that is damaged or has no sense there
  std::vector<std::uint64_t> ends; // octets up to the end of each of them
  std::uint64_t head_end = 0;      // octets of the first line
  std::optional<Problem> damage;   // what that line is, with its number
  std::optional<FileLock> lock;    // so that it is offered once
};
// Refuses what another program holds, what is no journal, a damaged first line and a newer version.
Result<RecoveredJournal> recover(const std::string& path);

struct Replayed {
  Lab lab;
  History history;                // clean where the document stands
  JournalBase base;               // that document
  std::size_t used = 0;           // of the steps: how many stand in the history or came before the document
  std::size_t again = 0;          // of them, steps after the document: 0 means that nothing was lost
  std::optional<Problem> stopped; // the first step that does not fit, if any
};
// Reads the document that the steps begin with: the one saved last, as far as it has the content that was
// saved; else an earlier one. Refuses when none is there with the content it had.
Result<Replayed> replay(const RecoveredJournal& journal);
// The same from `base`, which is the lab before steps[from].
Result<Replayed> replay(const RecoveredJournal& journal, std::size_t from, Lab base);

// Takes the journal away, and what a killed program may have left beside it.
Result<void> discard(RecoveredJournal&& journal);

namespace detail {

// What can be taken back and done again, last on top.
struct StepStacks {
  std::vector<Edit> done, undone;
  bool edited = false;
  // False when the step has no sense here.
  bool take(const JournalStep& step);
  // Where the steps of a journal begin, as far as they say it.
  static StepStacks before(const std::vector<JournalStep>& steps);
};
Result<void> remove_journal(const std::string& path);
bool is_journal_name(std::string_view name);

} // namespace detail

} // namespace snug
