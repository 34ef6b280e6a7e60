#include "core/findings/size_fixes.h"
#include "core/findings/tools.h"
#include "core/text/size_rules_text.h"

#include <array>

namespace snug {

namespace {

SizeSet other(SizeSet s) { return s == SizeSet::lean ? SizeSet::current : SizeSet::lean; }
std::int64_t usual(const Role& r, SizeSet s) { return s == SizeSet::lean ? r.lean_usual : r.current_usual; }
const Template& word_of(SizeSet s) { return s == SizeSet::lean ? text::sizes_lean : text::sizes_current; }

// Places of the machines that have the usual size of the set that the lab does not say, where they are more
// than those that have its own. A hypervisor with guests is as large as they need it.
std::vector<std::uint32_t> of_other_set(const Context& c) {
  const SizeSet own = c.lab.facts.sizes;
  std::vector<std::uint32_t> out;
  std::size_t same = 0;
  for (std::uint32_t m = 0; m < c.index.machines().size(); ++m) {
    const MachineColumn& column = c.index.machines()[m];
    if (column.role == kNowhere) continue;
    const Role& role = c.lab.roles[column.role];
    if (usual(role, own) == usual(role, other(own))) continue;
    if (column.memory == usual(role, own)) ++same;
    if (column.memory == usual(role, other(own)) && c.index.guests_of(m).empty()) out.push_back(m);
  }
  if (out.size() <= same) out.clear();
  return out;
}

void check_other_set(const Context& c, std::vector<Finding>& out) {
  const std::vector<std::uint32_t> machines = of_other_set(c);
  if (machines.empty()) return;
  const SizeSet own = c.lab.facts.sizes;
  out.push_back(
      found(Severity::note,
            say(text::sizes_differ, Count{static_cast<std::int64_t>(machines.size())}, say(word_of(own)),
                say(word_of(other(own))), c.name(c.lab.machines[machines.front()].id)),
            say(text::sizes_differ_why), {AnyId{Kind::lab, 0}}));
}

std::optional<Fix> fix_other_set(const Context& c, const Finding&) {
  const SizeSet own = c.lab.facts.sizes;
  const std::vector<std::uint32_t> machines = of_other_set(c);
  const Message label =
      say(text::fix_usual_sizes, Count{static_cast<std::int64_t>(machines.size())}, say(word_of(own)));
  return build_fix(c, label, [&](EditBuilder& b) {
    for (const std::uint32_t m : machines)
      b.set(c.lab.machines[m].id, "memory", usual(c.lab.roles[c.index.machines()[m].role], own));
  });
}

constexpr std::array kRules{
    Rule{"sizes-differ", Topic::memory, Severity::note,
         "Machines have the sizes of the set that the lab does not use",
         "common practice, no published source", check_other_set, fix_other_set},
};

} // namespace

std::span<const Rule> size_rules() { return kRules; }

} // namespace snug
