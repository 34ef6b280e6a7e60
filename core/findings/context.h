#pragma once
// What rules look at: the lab, its index, budgets of every exercise, the addresses in use
// and who reaches whom.

#include "core/addressing/in_use.h"
#include "core/budget/budget.h"
#include "core/findings/finding.h"
#include "core/reach/by_exercise.h"

#include <vector>

namespace snug {

// Everything on first, then lab.exercises in order. Either there already, or made when a rule first looks at
// them: most rules do not. One thread at a time in the second case.
class BudgetList {
 public:
  explicit BudgetList(std::span<const ExerciseBudgets> ready) : list_(ready) {}
  BudgetList(const Index& index, const AddressesInUse& addresses) : index_(&index), addresses_(&addresses) {}
  std::size_t size() const { return all().size(); }
  const ExerciseBudgets* data() const { return all().data(); }
  const ExerciseBudgets& operator[](std::size_t i) const { return all()[i]; }
  auto begin() const { return all().begin(); }
  auto end() const { return all().end(); }

 private:
  std::span<const ExerciseBudgets> all() const {
    if (list_.empty()) make();
    return list_;
  }
  void make() const;

  mutable std::span<const ExerciseBudgets> list_; // never empty once it is there
  mutable std::vector<ExerciseBudgets> made_;
  const Index* index_ = nullptr;
  const AddressesInUse* addresses_ = nullptr;
};

struct Context {
  const Lab& lab;
  const Index& index;
  BudgetList budgets;
  const AddressesInUse& addresses;
  ReachByExercise* reach = nullptr; // for the rules about reach: never null
  // Not null: only findings with these places are wanted, so a rule may leave out what others come from.
  const std::vector<AnyId>* only = nullptr;
  bool is_wanted(AnyId first) const { return !only || only->front() == first; }

  // As name_of(lab, id), without searching the lab.
  std::string name(AnyId id) const;
};

} // namespace snug
