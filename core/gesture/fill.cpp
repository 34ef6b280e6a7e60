#include "core/gesture/fill.h"

#include "core/addressing/plan.h"
#include "core/addressing/prefix_plan.h"

#include <algorithm>

namespace snug::detail {

void give_prefixes(Lab& lab) {
  Lab plan = lab;
  if (plan_prefixes4(plan, false)) lab = std::move(plan);
}

AnyId store_for(const Lab& lab, MachineId carrier) {
  if (!carrier) return lab.volumes.empty() ? AnyId{} : AnyId(lab.volumes.front().id);
  for (const Disk& d : lab.disks)
    if (d.machine == carrier) return d.id;
  return {};
}

Result<void> take_in(Lab& lab, const Result<Edit>& edit) {
  if (!edit) return fail(edit.error());
  if (const auto done = apply(lab, *edit); !done) return fail(done.error());
  return {};
}

void suggest_for(Lab& lab, CardId card) {
  const auto it =
      std::find_if(lab.cards.begin(), lab.cards.end(), [card](const Card& c) { return c.id == card; });
  if (it->mac_source == MacSource::derived) it->mac = derived_mac(lab.facts.uid, 0, card.number);
  if (!it->segment) return;
  std::vector<CardAddress> rows;
  const Index index(lab);
  const AddressesInUse in_use(index);
  for (const auto& address : {next_free(index, in_use, it->segment, it->machine),
                              next_free6(index, in_use, it->segment, it->machine)}) {
    if (!address) continue;
    CardAddress& row = rows.emplace_back();
    row.kind = AddressKind::suggested;
    row.address = address;
  }
  it->addresses = std::move(rows);
}

Edit edit_between(const Lab& from, const Lab& to, Message label) {
  Edit edit = difference(from, to);
  edit.label = std::move(label);
  return edit;
}

} // namespace snug::detail
