#pragma once
// A person at work: edits, typing, undo, redo and saving at random, the same for a seed, with or without a
// journal.

#include "core/document/journal.h"
#include "core/document/recovery.h"
#include "tests/support/random_lab.h"

#include <functional>

namespace snug::test {

class JournalSession {
 public:
  // `document`: where it saves; empty: it never saves.
  JournalSession(std::uint64_t seed, Lab first, std::string document)
      : lab(std::move(first)), random_(seed), document_(std::move(document)) {}

  // Does one thing; the journal, if any, is told. False when the journal had a Problem, which is kept.
  bool act(Journal* journal, Journal::Time now = {});

  Lab lab;
  History history;
  std::optional<Problem> problem;
  int saves = 0, joins = 0;
  std::function<void()> changed; // called after each change of the lab, once the journal was told

 private:
  bool edit(const Edit& e, bool merge);
  void type();
  void save();
  void tell(Result<void> said);
  void told() const {
    if (changed) changed();
  }

  Random random_;
  std::string document_;
  Journal* journal_ = nullptr;
  Journal::Time now_{};
};

// The head of a journal that begins with the lab as the document holds it; "": never saved.
JournalHead head_of(const Lab& lab, const std::string& document);

// The only journal in a folder, recovered and replayed to its end; a torn last line is no failure. With the
// fatal failures of GoogleTest; `recovered` stays empty where the folder has no journal.
void take_back(const std::string& folder, std::optional<RecoveredJournal>& recovered, Replayed& back);

} // namespace snug::test
