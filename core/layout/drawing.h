#pragma once
// The diagram as plain values: shapes in painting order, each with what it shows, and the boxes to hit. Whole
// pixels, x to the right, y down, the sheet's corner at 0, 0. The same lab gives the same drawing everywhere.

#include "core/base/ids.h"
#include "core/layout/text_width.h"

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace snug {

struct Point {
  int x = 0;
  int y = 0;
  friend bool operator==(const Point&, const Point&) = default;
};

// Half open: x … x + w, y … y + h.
struct Box {
  int x = 0;
  int y = 0;
  int w = 0;
  int h = 0;
  int right() const { return x + w; }
  int bottom() const { return y + h; }
  Point centre() const { return {x + w / 2, y + h / 2}; }
  bool overlaps(const Box& o) const {
    return x < o.right() && o.x < right() && y < o.bottom() && o.y < bottom();
  }
  bool contains(const Box& o) const {
    return x <= o.x && y <= o.y && o.right() <= right() && o.bottom() <= bottom();
  }
  friend bool operator==(const Box&, const Box&) = default;
};

// What a colour is for; palette.h says which colour a theme gives it.
enum class Ink : std::uint8_t {
  none,
  sheet,     // behind everything
  outside,   // the strip beyond the frame
  inside,    // the frame's own surface
  card,      // a machine
  room,      // a hypervisor
  text,      // names
  muted,     // what stands beside names
  edge,      // outlines of cards and boxes
  frame,     // outline of the PC
  track,     // the empty part of a bar
  bar,       // the filled part
  inner_bar, // the filled part of a hypervisor's bar
  hatch,     // the PC's own part of its memory
  block,     // a machine's part of it
  room_block,
  on_fill, // a letter on a filled mark
  amber,
  moss,
  lagoon,
  cobalt,
  violet,
  berry,
  slate,
  error,
  caution,
  ok,
  info,
};
inline constexpr int kInkCount = static_cast<int>(Ink::info) + 1;

// Patterns of lines (CONVENTIONS 4); `ticks` is a solid line with short cross strokes.
enum class Dash : std::uint8_t { solid, ticks, dots, long_dash, dash_dot, dash, short_dash, wire, fine };

// What a shape is part of.
enum class Part : std::uint8_t {
  sheet,
  outside,
  frame,
  lan,
  lane, // line between a LAN and the frame
  rail,
  riser, // joins stretches of one segment
  rail_end,
  translator,
  socket,
  wire,
  joint,
  address, // beside a joint or under a square
  gateway, // beside the address: the card is its segment's gateway
  dhcp,    // or serves DHCP there
  machine,
  pin,
  square, // where an inner guest is connected
  meter,
  room, // free part of a hypervisor's inner budget
  power,
  band, // name of a row of machines; is of its first machine
  badge,
  held, // a machine is kept in its place
  name, // of a segment, with what stands below it
  ruler,
  legend,
  title_block,
};

enum class Anchor : std::uint8_t { start, middle, end };

struct Shape {
  AnyId of;
  Part part = Part::sheet;
};
// Stroke widths are tenths of a pixel; 0: no outline.
struct BoxShape : Shape {
  Box box;
  int radius = 0;
  Ink fill = Ink::none;
  Ink stroke = Ink::none;
  int stroke_width = 10;
  Dash dash = Dash::solid;
};
struct LineShape : Shape {
  Point from;
  Point to;
  Ink ink = Ink::text;
  int width = 10;
  Dash dash = Dash::solid;
};
struct CircleShape : Shape {
  Point centre;
  int radius = 0;
  Ink fill = Ink::none;
  Ink stroke = Ink::none;
  int stroke_width = 10;
};
struct PolygonShape : Shape {
  std::vector<Point> points;
  Ink fill = Ink::none;
  Ink stroke = Ink::none;
  int stroke_width = 10;
};
// One line of text. Painters fit it into `box.w`; the letters stand on `baseline`.
struct TextShape : Shape {
  Box box;
  int baseline = 0;
  int size = 10; // pixels
  Weight weight = Weight::regular;
  Anchor anchor = Anchor::start;
  Ink ink = Ink::text;
  int length = 0; // advance width in 1/64 pixel, at most box.w
  std::string text;
  int anchor_x() const {
    return anchor == Anchor::start ? box.x : anchor == Anchor::end ? box.right() : box.x + box.w / 2;
  }
};
using AnyShape = std::variant<BoxShape, LineShape, CircleShape, PolygonShape, TextShape>;

// An element on the drawing: its shapes, what to say about it, where it is hit. Groups are ordered by `first`
// and nest: one that begins inside another ends inside it.
struct Group {
  AnyId of; // none: the ruler, the legend, the title block
  Part part = Part::sheet;
  std::uint32_t first = 0; // of the shapes
  std::uint32_t end = 0;
  Box box; // of a machine, LAN, frame; of a segment: its first stretch; of a card: its first pin
  std::string title;
  std::string description;
};

struct Drawing {
  int width = 0;
  int height = 0;
  std::string title;
  std::string description;
  std::vector<AnyShape> shapes;
  std::vector<Group> groups;
};

} // namespace snug
