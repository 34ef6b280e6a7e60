#pragma once
// Work on a copy of a lab, from which the edit is the difference.

#include "core/edit/build.h"

#include <utility>

namespace snug::detail {

// Gives an element the lab's next id.
template <typename E>
E& append(Lab& lab, E e) {
  e.id.number = lab.facts.next_id++;
  list_of<E>(lab).push_back(std::move(e));
  return list_of<E>(lab).back();
}
// Suggests addresses for a card that has no typed one, and the MAC that follows from its id.
void suggest_for(Lab& lab, CardId card);
// Segments without a prefix get one from the numbering scheme; none does where it has too few left.
void give_prefixes(Lab& lab);
// Where a new disk inside `carrier` lies (none: the PC): its first disk, the PC's first volume; none.
AnyId store_for(const Lab& lab, MachineId carrier);
// Applies what a gesture gives to the copy that the next one works on.
Result<void> take_in(Lab& lab, const Result<Edit>& edit);
// The edit with a label.
Edit edit_between(const Lab& from, const Lab& to, Message label);

} // namespace snug::detail
