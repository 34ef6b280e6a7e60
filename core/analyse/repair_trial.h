#pragma once
// Tries repairs on one copy of a lab, one after the other.

#include "core/findings/finding.h"

namespace snug {

class RepairTrial {
 public:
  explicit RepairTrial(const Lab& lab) : lab_(lab) {} // refers to the lab
  // Whether the finding is gone once the edit is made. The copy is the lab again afterwards.
  bool mends(const Finding&, const Edit&);

 private:
  const Lab& lab_;
  std::optional<Lab> copy_; // from the first repair on
};

} // namespace snug
