#pragma once
// The repairs that a report shows, each found once.

#include "core/report/findings_report.h"

namespace snug {

// Whether a report shows a finding.
bool shown(const Analysis&, const Finding&, const ReportChoice&);

class Repairs {
 public:
  // Of the findings that are shown; refers to the analysis.
  Repairs(const Analysis&, const ReportChoice&);
  // Of a finding of that analysis; empty where there is none, or it is not shown.
  const std::vector<Fix>& of(const Finding&) const;

 private:
  const Analysis& analysis_;
  std::vector<std::vector<Fix>> fixes_; // by place among the findings
};

} // namespace snug
