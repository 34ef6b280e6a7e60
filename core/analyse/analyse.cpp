#include "core/analyse/analyse.h"

#include "core/budget/segments.h"

#include <algorithm>
#include <cassert>
#include <future>
#include <system_error>

namespace snug {

namespace {

// Rule and places, whatever their order: the identity of a finding (DECISIONS 19).
struct Identity {
  std::string_view rule;
  std::vector<AnyId> places;
  Identity(std::string_view r, std::span<const AnyId> p) : rule(r), places(p.begin(), p.end()) {
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
  }
  friend auto operator<=>(const Identity&, const Identity&) = default;
};

void mark_accepted(const Lab& lab, std::span<Finding> findings) {
  if (lab.accepted.empty() || findings.empty()) return;
  std::vector<std::pair<Identity, const Accepted*>> known;
  known.reserve(lab.accepted.size());
  for (const Accepted& a : lab.accepted) known.emplace_back(Identity(a.rule, a.places), &a);
  std::stable_sort(known.begin(), known.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  for (Finding& f : findings) {
    const Identity identity(f.rule->id, f.places);
    const auto it = std::lower_bound(known.begin(), known.end(), identity,
                                     [](const auto& k, const Identity& i) { return k.first < i; });
    if (it != known.end() && it->first == identity) f.accepted = it->second;
  }
}

void sort_by_severity(std::vector<Finding>& findings) {
  std::vector<Finding> sorted;
  sorted.reserve(findings.size());
  for (const Severity s : {Severity::error, Severity::caution, Severity::note})
    for (Finding& f : findings)
      if (f.severity == s) sorted.push_back(std::move(f));
  findings = std::move(sorted);
}

// A thread costs some 50 us, on a busy machine milliseconds: it must save more.
constexpr std::size_t kWorthThread = 5000;

// In a large lab a second thread works meanwhile. Gives what has no state where there is none to be had.
template <typename Work>
std::future<std::invoke_result_t<Work>> beside(const Index& index, Work work) {
  try {
    if (index.machines().size() >= kWorthThread) return std::async(std::launch::async, std::move(work));
  } catch (const std::system_error&) { // one after the other
  }
  return {};
}

// Sums need no addresses; both only read the index.
std::vector<ExerciseBudgets> budgets_beside(const Index& index, std::unique_ptr<AddressesInUse>& addresses) {
  const auto sums = [&index] { return budgets_without_addresses(index); };
  auto meanwhile = beside(index, sums);
  addresses = std::make_unique<AddressesInUse>(index);
  std::vector<ExerciseBudgets> budgets = meanwhile.valid() ? meanwhile.get() : sums();
  add_addresses(budgets, index, *addresses);
  return budgets;
}

void check(const Context& c, std::span<const Rule> some, std::vector<Finding>& out) {
  for (const Rule& rule : some) {
    const std::size_t before = out.size();
    rule.check(c, out);
    for (std::size_t i = before; i < out.size(); ++i) out[i].rule = &rule;
  }
}

// All rules in the order of the catalogue, about half of the work beside the other: of the rules before the
// last family none looks at what another one found.
std::vector<Finding> check_all(const Context& c) {
  const std::span<const Rule> all = rules();
  const auto is_address = [](const Rule& r) { return r.topic == Topic::addresses; };
  const auto half = static_cast<std::size_t>(std::find_if(all.begin(), all.end(), is_address) - all.begin());
  const std::size_t last = all.size() - plan_rules().size();
  const auto first_half = [&c, first = all.first(half)] {
    std::vector<Finding> out;
    check(c, first, out);
    return out;
  };
  auto meanwhile = beside(c.index, first_half);
  std::vector<Finding> rest;
  check(c, all.subspan(half, last - half), rest);
  std::vector<Finding> out = meanwhile.valid() ? meanwhile.get() : first_half();
  out.insert(out.end(), std::move_iterator(rest.begin()), std::move_iterator(rest.end()));
  check(c, all.subspan(last), out);
  return out;
}

bool is_open_error(const Finding& f) { return f.severity == Severity::error && !f.accepted; }

} // namespace

Analysis::Analysis(const Lab& lab)
    : index_(std::make_unique<Index>(lab)), budgets_(budgets_beside(*index_, addresses_)),
      reach_(std::make_unique<ReachByExercise>(*index_, *addresses_)) {
  findings_ = check_all(context());
  mark_accepted(lab, findings_);
  sort_by_severity(findings_);
}

const ExerciseBudgets& Analysis::budgets(ExerciseId exercise) const {
  const auto it = std::find_if(budgets_.begin(), budgets_.end(),
                               [&](const ExerciseBudgets& b) { return b.exercise == exercise; });
  assert(it != budgets_.end());
  return *it;
}

Reach& Analysis::reach(ExerciseId exercise) const {
  return reach_->at(static_cast<std::size_t>(&budgets(exercise) - budgets_.data()));
}

bool Analysis::has_error() const { return std::any_of(findings_.begin(), findings_.end(), is_open_error); }

bool Analysis::has_error(ExerciseId exercise) const {
  return std::any_of(findings_.begin(), findings_.end(),
                     [&](const Finding& f) { return is_open_error(f) && holds_in(lab(), f, exercise); });
}

bool holds_in(const Lab& lab, const Finding& finding, ExerciseId exercise) {
  if (finding.when.always) return true;
  if (!exercise) return finding.when.everything_on;
  for (std::size_t i = 0; i < lab.exercises.size() && i < finding.when.exercises.size(); ++i)
    if (lab.exercises[i].id == exercise) return finding.when.exercises[i];
  return false;
}

} // namespace snug
