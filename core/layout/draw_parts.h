#pragma once
// The parts of a drawing, in painting order.

#include "core/layout/pen.h"
#include "core/layout/place.h"

namespace snug::layout {

struct Scene {
  const Content& content;
  const Places& places;
  const DrawOptions& options;
};

// All of them.
Drawing draw_content(const Content&, const DrawOptions&);

void draw_outside(Pen&, const Scene&); // sheet, strip, frame, LANs
void draw_ruler(Pen&, const Scene&);
// Over the ruler: what the machines of `other`, an exercise of this name, take.
void draw_comparison(Pen&, const Scene&, const Content& other, const std::string& name);
void draw_rails(Pen&, const Scene&); // with names, ends, risers, sockets, lines to LANs
void draw_wires(Pen&, const Scene&); // with joints and addresses
void draw_machines(Pen&, const Scene&);
// Legend and title block below the frame; grows the sheet of `places`.
void draw_legend(Pen&, const Scene&, Places& places);

Ink ink_of(Severity);
Ink ink_of(Verdict, Ink fits);
// A square with the letter of a segment: a guest is connected to it.
enum class SquareKind : std::uint8_t { joined, carries, island };
void draw_square(Pen&, Point corner, const RailText&, SquareKind);

} // namespace snug::layout
