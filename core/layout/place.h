#pragma once
// Where everything of a drawing stands.

#include "core/layout/content.h"

namespace snug::layout {

struct MachinePlace {
  Box box;
  Box bar;  // w 0: none
  Box room; // the free part of a hypervisor; w 0: none
  // One for each plug: on the PC the middle of the pin on the card's lower edge, in a room the corner of the
  // square.
  std::vector<Point> plugs;
};

struct Stretch {
  std::uint32_t rail = kNone;
  int y = 0;
  bool first = false; // of its segment: carries what leads out of the frame
};

struct Row {
  int top = 0;
  int cards_bottom = 0;
  int bottom = 0;
  int right = 0; // of cards and labels
  std::vector<std::uint32_t> machines;
  std::vector<Stretch> stretches;
};

struct Places {
  std::vector<MachinePlace> machines; // as Content::machines
  std::vector<Row> rows;
  int rails_left = 0;
  int names_left = 0;
  int names_width = 0;
  int rails_right = 0;
  std::vector<int> riser_x;                        // by rail; 0: one stretch only
  std::vector<std::vector<std::uint32_t>> rows_of; // by rail
  Box outside, frame, ruler, legend, title_block;
  std::vector<Box> lans;
  std::vector<int> lane_x; // by rail: where its line outside turns; 0: straight
  std::vector<int> lan_y;  // by rail: where that line meets its LAN
  int width = 0;
  int height = 0;
};

// Height of text above the joints of a rail in any row, in lines (at least 1).
int lines_above(const Content&, const Row&, std::uint32_t rail);

// Sizes of all cards, the boxes inside them relative to their card's corner; guests have their place in their
// room, machines on the PC stand at 0, 0.
void size_machines(const Content&, Places&);
// Breaks bands into rows and gives machines and pins their x; y is relative to the row's top.
void fill_rows(const Content&, Places&, int left);
// Everything.
Places place(const Content&, const DrawOptions&);

} // namespace snug::layout
