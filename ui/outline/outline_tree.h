#pragma once
// The lab as a tree of names: the PC with its machines, their guests, cards and disks; the segments with the
// cards on them; what lies outside; volumes; exercises.

#include "core/analyse/analyse.h"

#include <QString>

#include <vector>

namespace snug {

struct OutlineNode {
  AnyId id;        // none: a heading
  int parent = -1; // place in the tree; -1: at the top
  int row = 0;     // among its siblings
  QString name;    // what is shown
  QString detail;  // memory, address, size
  bool is_off = false;
  std::vector<int> children;
};

// Parents stand before their children.
std::vector<OutlineNode> outline_of(const Analysis&, ExerciseId exercise);
// Whether both have the same elements at the same places, whatever their names are.
bool same_places(const std::vector<OutlineNode>&, const std::vector<OutlineNode>&);

} // namespace snug
