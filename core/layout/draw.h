#pragma once
// From an analysed lab to its picture.

#include "core/analyse/analyse.h"
#include "core/layout/drawing.h"

namespace snug {

struct DrawOptions {
  ExerciseId exercise;         // none: everything on
  bool full_addresses = true;  // beside every pin; else the last part only (".12")
  bool inner_addresses = true; // under the squares of inner guests
  bool show_ruler = true;      // the PC's memory to scale
  bool show_findings = true;   // badges; accepted findings have none
  bool show_legend = true;     // legend and title block
};

// Placement (DECISIONS 10, 22): machines stand in bands in their order; a wide band is broken into rows; each
// row has its own stretch of the segments it uses. Cards before a changed one in its band, and the guests of
// all other hypervisors, keep their place.
Drawing draw(const Analysis&, const DrawOptions& = {});

} // namespace snug
