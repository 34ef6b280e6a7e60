#include "core/reach/by_exercise.h"

#include "core/budget/budget.h"

namespace snug {

// Most exercises differ only in who answers: they share one network.
Reach& ReachByExercise::at(std::size_t occasion) {
  std::unique_ptr<Reach>& r = reach_[occasion];
  if (r) return *r;
  std::vector<std::uint8_t>& on = running_[occasion];
  on = running(*index_, occasion == 0 ? ExerciseId{} : index_->lab().exercises[occasion - 1].id);
  for (std::size_t i = 0; i < reach_.size() && !r; ++i)
    if (reach_[i] && gives_same(*index_, running_[i], on)) r = std::make_unique<Reach>(*reach_[i], on);
  if (!r) r = std::make_unique<Reach>(*index_, *addresses_, on);
  return *r;
}

std::span<const ListedNeed> ReachByExercise::needs() {
  if (!needs_) needs_ = list_needs(*index_, *addresses_);
  return *needs_;
}

} // namespace snug
