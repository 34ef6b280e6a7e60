#pragma once
// Undo and redo (DECISIONS 5). Selection, zoom and the current exercise are not edits.

#include "core/edit/edit.h"

#include <cstdint>

namespace snug {

// What became of the last edit that changed the lab: a step of its own; part of the step before; that step
// and the edit together change nothing, so it is gone.
enum class Recorded : std::uint8_t { step, joined, dissolved };

class History {
 public:
  // Keeps at most this many steps; the oldest go first.
  static constexpr std::size_t kMostSteps = 10'000;

  // Applies and records. With `merge`, an edit that touches the same fields as the last one joins it (typing,
  // dragging) as long as seal() was not called. An edit that changes nothing is not recorded.
  Result<bool> perform(Lab&, Edit, bool merge = false);
  // Records an edit that was applied already.
  void record(Edit);
  void seal() { sealed_ = true; }
  Recorded recorded() const { return recorded_; }

  bool can_undo() const { return done_count_ > 0; }
  bool can_redo() const { return done_count_ < steps_.size(); }
  const Edit* undo_step() const { return can_undo() ? &steps_[done_count_ - 1] : nullptr; }
  const Edit* redo_step() const { return can_redo() ? &steps_[done_count_] : nullptr; }
  // The ids touched, to be selected. Asserts can_undo(), can_redo().
  std::vector<AnyId> undo(Lab&);
  std::vector<AnyId> redo(Lab&);

  void mark_clean() {
    clean_at_ = done_count_;
    sealed_ = true;
  }
  bool is_clean() const { return clean_at_ == done_count_; }
  // Grows with every change of the lab, undo and redo included; results of slow searches carry it (DECISIONS
  // 2).
  std::uint64_t state() const { return state_; }
  std::size_t size() const { return steps_.size(); }

 private:
  std::vector<Edit> steps_;
  std::size_t done_count_ = 0;
  std::optional<std::size_t> clean_at_ = 0; // nothing: that state is out of reach
  std::uint64_t state_ = 0;
  bool sealed_ = true;
  Recorded recorded_ = Recorded::step;
};

// Performs several edits as one step. Rolls the lab back to where it began unless commit() was called.
class Transaction {
 public:
  Transaction(Lab& lab, Message label) : lab_(lab), edit_{std::move(label), {}} {}
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  Transaction(Transaction&&) = delete;
  Transaction& operator=(Transaction&&) = delete;

  Result<bool> perform(const Edit&);
  // Records everything as one step of `history`.
  void commit(History& history);

 private:
  Lab& lab_;
  Edit edit_;
  bool open_ = true;
};

} // namespace snug
