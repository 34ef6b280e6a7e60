#include "core/reach/by_exercise.h"

namespace snug {

Reach& ReachByExercise::at(std::size_t occasion) {
  std::unique_ptr<Reach>& r = reach_[occasion];
  if (!r) {
    const ExerciseId exercise = occasion == 0 ? ExerciseId{} : index_->lab().exercises[occasion - 1].id;
    r = std::make_unique<Reach>(*index_, *addresses_, exercise);
  }
  return *r;
}

std::span<const ListedNeed> ReachByExercise::needs() {
  if (!needs_) needs_ = list_needs(*index_, *addresses_);
  return *needs_;
}

} // namespace snug
