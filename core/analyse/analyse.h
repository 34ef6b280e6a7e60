#pragma once
// The one pure function from a lab to everything that is known of it (ARCHITECTURE, DECISIONS 2).

#include "core/analyse/repair_trial.h"
#include "core/findings/rule.h"

#include <memory>

namespace snug {

// Refers to the lab it was made from: keep that unchanged and alive while you use it.
class Analysis {
 public:
  explicit Analysis(const Lab& lab);
  Analysis(Analysis&&) = default;
  Analysis& operator=(Analysis&&) = default;

  const Lab& lab() const { return index_->lab(); }
  const Index& index() const { return *index_; }
  const AddressesInUse& addresses() const { return *addresses_; }
  // Who reaches whom, by exercise; each is made when it is first asked for. One thread at a time.
  ReachByExercise& reach() const { return *reach_; }
  Reach& reach(ExerciseId exercise) const; // none: everything on
  // Everything on first, then the exercises in the lab's order.
  std::span<const ExerciseBudgets> budgets() const { return budgets_; }
  const ExerciseBudgets& budgets(ExerciseId exercise) const; // none: everything on
  // Errors first, then cautions, then notes; within a severity in the order of the catalogue. Accepted ones
  // included.
  std::span<const Finding> findings() const { return findings_; }
  // Whether an error that is not accepted remains; for one exercise (none: everything on) or, without
  // argument, in any occasion.
  bool has_error() const;
  bool has_error(ExerciseId exercise) const;
  // The repair of a finding of this analysis, where one is deterministic and the finding is gone after it.
  std::optional<Fix> fix(const Finding&) const;
  // That repair, then the other one where there is a choice.
  std::vector<Fix> fixes(const Finding&) const;
  // The same of many findings, in their order: what is tried is taken back instead of copying the lab for
  // each, and where it is worth it several threads try.
  std::vector<std::vector<Fix>> fixes(std::span<const Finding* const>) const;

 private:
  std::vector<Fix> fixes(const Finding&, RepairTrial&) const;
  Context context() const { return {lab(), *index_, BudgetList(budgets_), *addresses_, reach_.get()}; }
  std::unique_ptr<Index> index_;
  std::unique_ptr<AddressesInUse> addresses_;
  std::vector<ExerciseBudgets> budgets_;
  std::unique_ptr<ReachByExercise> reach_;
  std::vector<Finding> findings_;
};

inline Analysis analyse(const Lab& lab) { return Analysis(lab); }

// Whether a finding holds in an exercise (none: everything on).
bool holds_in(const Lab&, const Finding&, ExerciseId exercise);

} // namespace snug
