#include "core/analyse/repair_trial.h"

#include "core/findings/still_found.h"

namespace snug {

bool RepairTrial::mends(const Finding& finding, const Edit& edit) {
  if (!copy_) copy_ = lab_;
  if (!apply(*copy_, edit)) return false;
  const bool gone = !is_still_found(*copy_, finding);
  if (!apply(*copy_, inverse(edit))) copy_.reset();
  return gone;
}

} // namespace snug
