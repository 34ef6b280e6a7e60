#include "core/findings/context.h"

#include "core/model/store.h"

#include <algorithm>

namespace snug {

namespace {

// "deck-a card 2": the machine's name and the part's own, or its place among its siblings.
std::string part_name(const Context& c, MachineId owner, const std::string& own, std::string_view noun,
                      std::span<const std::uint32_t> siblings, std::uint32_t place) {
  std::string text = c.name(owner) + " ";
  if (!own.empty()) return text + own;
  const auto nth = std::find(siblings.begin(), siblings.end(), place) - siblings.begin() + 1;
  return text + std::string(noun) + " " + std::to_string(nth);
}

} // namespace

void BudgetList::make() const {
  made_ = budgets_of(*index_, *addresses_);
  list_ = made_;
}

std::string Context::name(AnyId id) const {
  const std::uint32_t p = index.place(id);
  if (p != kNowhere && id.kind == Kind::machine && !lab.machines[p].name.empty()) return lab.machines[p].name;
  if (p != kNowhere && id.kind == Kind::card) {
    const std::uint32_t m = index.machine_of_card(p);
    if (m != kNowhere)
      return part_name(*this, lab.machines[m].id, lab.cards[p].name, "card", index.cards_of(m), p);
  }
  if (p != kNowhere && id.kind == Kind::disk) {
    const std::uint32_t m = index.machine_of_disk(p);
    if (m != kNowhere)
      return part_name(*this, lab.machines[m].id, lab.disks[p].name, "disk", index.disks_of(m), p);
  }
  return name_of(lab, id);
}

} // namespace snug
