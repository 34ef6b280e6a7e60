#include "core/edit/history.h"

#include <algorithm>
#include <cassert>

namespace snug {

namespace {

// Both edits only set fields, and the same ones.
bool same_fields(const Edit& a, const Edit& b) {
  if (a.steps.size() != b.steps.size()) return false;
  return std::equal(a.steps.begin(), a.steps.end(), b.steps.begin(),
                    [](const Primitive& x, const Primitive& y) {
                      const auto* s = std::get_if<SetField>(&x);
                      const auto* t = std::get_if<SetField>(&y);
                      return s && t && s->id == t->id && s->field == t->field;
                    });
}

} // namespace

Result<bool> History::perform(Lab& lab, Edit e, bool merge) {
  if (e.empty()) return false;
  auto changed = apply(lab, e);
  if (!changed || !*changed) return changed;
  const bool joins =
      merge && !sealed_ && can_undo() && !can_redo() && same_fields(steps_[done_count_ - 1], e);
  if (!joins) {
    record(std::move(e));
    sealed_ = !merge;
    return true;
  }
  ++state_;
  Edit joined = merged(steps_.back(), e);
  if (clean_at_ == done_count_) clean_at_.reset();
  recorded_ = joined.empty() ? Recorded::dissolved : Recorded::joined;
  if (joined.empty()) {
    steps_.pop_back();
    --done_count_;
    sealed_ = true;
  } else {
    steps_.back() = std::move(joined);
  }
  return true;
}

void History::record(Edit e) {
  if (e.empty()) return;
  if (clean_at_ && *clean_at_ > done_count_) clean_at_.reset();
  steps_.resize(done_count_);
  steps_.push_back(std::move(e));
  ++done_count_;
  ++state_;
  sealed_ = true;
  recorded_ = Recorded::step;
  if (steps_.size() <= kMostSteps) return;
  steps_.erase(steps_.begin());
  --done_count_;
  if (clean_at_) clean_at_ = *clean_at_ == 0 ? std::nullopt : std::optional(*clean_at_ - 1);
}

std::vector<AnyId> History::undo(Lab& lab) {
  assert(can_undo());
  const Edit back = inverse(steps_[done_count_ - 1]);
  [[maybe_unused]] const auto done = apply(lab, back);
  assert(done.has_value());
  --done_count_;
  ++state_;
  sealed_ = true;
  return touched(back);
}

std::vector<AnyId> History::redo(Lab& lab) {
  assert(can_redo());
  [[maybe_unused]] const auto done = apply(lab, steps_[done_count_]);
  assert(done.has_value());
  ++done_count_;
  ++state_;
  sealed_ = true;
  return touched(steps_[done_count_ - 1]);
}

Transaction::~Transaction() {
  if (!open_ || edit_.empty()) return;
  [[maybe_unused]] const auto back = apply(lab_, inverse(edit_));
  assert(back.has_value());
}

Result<bool> Transaction::perform(const Edit& e) {
  auto changed = apply(lab_, e);
  if (!changed || !*changed) return changed;
  Message label = edit_.label;
  edit_ = merged(edit_, e);
  edit_.label = std::move(label);
  return true;
}

void Transaction::commit(History& history) {
  history.record(std::move(edit_));
  edit_ = {};
  open_ = false;
}

} // namespace snug
