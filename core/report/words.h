#pragma once
// The fixed words of reports.

#include "core/budget/budget.h"
#include "core/findings/finding.h"

namespace snug {

constexpr std::string_view word(Severity s) {
  return s == Severity::error ? "error" : s == Severity::caution ? "caution" : "note";
}
constexpr std::string_view word(Verdict v) {
  return v == Verdict::over ? "over" : v == Verdict::tight ? "tight" : "fits";
}

} // namespace snug
