#include "core/findings/size_fixes.h"

#include "core/budget/memory.h"
#include "core/budget/segments.h"
#include "core/findings/still_found.h"
#include "core/findings/tools.h"
#include "core/text/size_rules_text.h"

#include <algorithm>
#include <array>
#include <span>

namespace snug {

namespace {

constexpr std::size_t kMostMachines = 2000; // a try in a larger lab takes longer than a person waits
constexpr std::int64_t kStep = 256;         // MiB: memory is given in these steps (DECISIONS 19)

// How small machines are to be.
struct Plan {
  SizeSet sizes;
  bool least; // not the usual size
  const Template* label;
};

std::int64_t size_of(const Role& r, const Plan& p) {
  const bool lean = p.sizes == SizeSet::lean;
  const std::int64_t least =
      std::max(lean ? r.lean_least : r.current_least, lean ? r.lean_refused_below : r.current_refused_below);
  return std::max<std::int64_t>(1, p.least ? least : std::max(least, lean ? r.lean_usual : r.current_usual));
}

// On the PC everything; of a hypervisor what is inside.
bool is_inside(const Index& index, std::uint32_t machine, std::uint32_t carrier) {
  if (carrier == kNowhere) return true;
  for (std::uint32_t m = index.carrier_of(machine); m != kNowhere; m = index.carrier_of(m))
    if (m == carrier) return true;
  return false;
}

// What the hypervisors of one depth need for themselves and what they carry at most.
void fit_hypervisors(Lab& lab, const Context& c, const Plan& plan, std::int32_t depth,
                     std::uint32_t carrier) {
  const Index index(lab);
  const std::vector<ExerciseBudgets> budgets = budgets_without_addresses(index);
  for (const std::uint32_t h : index.hypervisors()) {
    const MachineColumn& column = index.machines()[h];
    if (!column.has_guests || column.depth != depth || !is_inside(index, h, carrier)) continue;
    std::int64_t taken = 0;
    for (const ExerciseBudgets& e : budgets)
      for (const MemoryBudget& b : e.memory)
        if (b.of == AnyId(lab.machines[h].id)) taken = std::max(taken, b.taken);
    const std::int64_t needs = (footprint(index, h) + taken + kStep - 1) / kStep * kStep;
    const std::int64_t least = column.role == kNowhere ? 0 : size_of(c.lab.roles[column.role], plan);
    lab.machines[h].memory = std::min(lab.machines[h].memory, std::max(needs, least));
  }
}

struct Saving {
  std::uint32_t machine = 0; // without guests of its own
  std::int64_t mib = 0;
};

// Who gives how much, the largest first.
std::vector<Saving> savings(const Context& c, const Plan& plan, std::uint32_t carrier) {
  std::vector<Saving> out;
  for (std::uint32_t m = 0; m < c.lab.machines.size(); ++m) {
    const MachineColumn& column = c.index.machines()[m];
    if (column.has_guests || column.role == kNowhere || !is_inside(c.index, m, carrier)) continue;
    const std::int64_t mib = c.lab.machines[m].memory - size_of(c.lab.roles[column.role], plan);
    if (mib > 0) out.push_back({m, mib});
  }
  std::stable_sort(out.begin(), out.end(), [](const Saving& a, const Saving& b) { return a.mib > b.mib; });
  return out;
}

Lab made_small(const Context& c, const Plan& plan, std::uint32_t carrier, std::span<const Saving> who) {
  Lab lab = c.lab;
  lab.facts.sizes = plan.sizes;
  std::int32_t deepest = -1;
  for (const MachineColumn& column : c.index.machines())
    if (column.has_guests) deepest = std::max(deepest, column.depth);
  for (const Saving& s : who) lab.machines[s.machine].memory -= s.mib;
  for (; deepest >= 0; --deepest) fit_hypervisors(lab, c, plan, deepest, carrier);
  return lab;
}

bool is_leaner(const Role& r) { return r.lean_least < r.current_least || r.lean_usual < r.current_usual; }

} // namespace

bool has_leaner_sizes(const Lab& lab) {
  return lab.facts.sizes != SizeSet::lean && std::any_of(lab.roles.begin(), lab.roles.end(), is_leaner);
}

std::optional<Fix> shrink(const Context& c, const Finding& f) {
  if (c.lab.machines.size() > kMostMachines) return std::nullopt;
  const std::array plans{Plan{c.lab.facts.sizes, true, &text::fix_least_sizes},
                         Plan{SizeSet::lean, false, &text::fix_lean_sizes},
                         Plan{SizeSet::lean, true, &text::fix_lean_least}};
  const std::uint32_t carrier = f.places[0].kind == Kind::machine ? c.index.place(f.places[0]) : kNowhere;
  for (const Plan& plan : plans) {
    const std::vector<Saving> all = savings(c, plan, carrier);
    const auto made = [&](std::size_t count) {
      return made_small(c, plan, carrier, std::span(all).first(count));
    };
    if (is_still_found(made(all.size()), f)) continue;
    std::size_t enough = all.size(); // of them; fewer give less
    for (std::size_t too_few = 0; too_few < enough;) {
      const std::size_t half = (too_few + enough) / 2;
      if (is_still_found(made(half), f))
        too_few = half + 1;
      else
        enough = half;
    }
    Edit edit = difference(c.lab, made(enough));
    const auto smaller = std::count_if(edit.steps.begin(), edit.steps.end(), [](const Primitive& p) {
      const auto* set = std::get_if<SetField>(&p);
      return set && set->id.kind == Kind::machine;
    });
    edit.label = say(*plan.label, Count{smaller});
    return Fix{edit.label, edit};
  }
  return std::nullopt;
}

} // namespace snug
