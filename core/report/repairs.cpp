#include "core/report/repairs.h"

namespace snug {

bool shown(const Analysis& a, const Finding& f, const ReportChoice& choice) {
  return choice.every_exercise || holds_in(a.lab(), f, choice.exercise);
}

Repairs::Repairs(const Analysis& a, const ReportChoice& choice) : analysis_(a), fixes_(a.findings().size()) {
  std::vector<const Finding*> wanted;
  for (const Finding& f : a.findings())
    if (shown(a, f, choice)) wanted.push_back(&f);
  std::vector<std::vector<Fix>> found = a.fixes(wanted);
  for (std::size_t i = 0; i < wanted.size(); ++i)
    fixes_[static_cast<std::size_t>(wanted[i] - a.findings().data())] = std::move(found[i]);
}

const std::vector<Fix>& Repairs::of(const Finding& f) const {
  return fixes_[static_cast<std::size_t>(&f - analysis_.findings().data())];
}

} // namespace snug
