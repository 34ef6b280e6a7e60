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
  bool show_state = true;      // without ruler: what runs and what is left, in the frame's head
  bool show_findings = true;   // badges; accepted findings have none
  bool show_legend = true;     // legend and title block
  bool describe = true;        // titles and descriptions of machines
  Box only;                    // machines and wires that do not meet it are left out; empty: none is
};

// Placement (DECISIONS 10, 22): machines stand in bands in their order; a wide band is broken into rows; each
// row has its own stretch of the segments it uses. Cards before a changed one in its band, and the guests of
// all other hypervisors, keep their place.
Drawing draw(const Analysis&, const DrawOptions& = {});

// The PC's memory to scale alone, as wide as asked (at least 200): what stands over the canvas. The block of
// a machine is the first box of Part::ruler that is of it.
Drawing draw_ruler(const Analysis&, ExerciseId exercise, int width);
// How many MiB of memory a pixel of that bar is; at least 1.
std::int64_t mib_per_pixel(const Analysis&, ExerciseId exercise, int width);

} // namespace snug
