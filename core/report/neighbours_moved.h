#pragma once
// Which machines stand elsewhere among their neighbours than before: numbers of places change for everyone
// behind one that is moved, and say nothing to people.

#include "core/model/lab.h"

#include <string>
#include <vector>

namespace snug {

// Machines with the same carrier in both labs that were moved: the fewest that explain the new order, and
// those in another row. In the order of the picture.
std::vector<MachineId> moved_among_neighbours(const Lab& from, const Lab& to);
// "after hold", "first", "first of row 2".
std::string place_words(const Lab&, MachineId);

} // namespace snug
