#pragma once
// Appends shapes to a drawing.

#include "core/layout/drawing.h"
#include "core/layout/metrics.h"

namespace snug::layout {

struct Style {
  int size = kSmall;
  Ink ink = Ink::text;
  Weight weight = Weight::regular;
  Anchor anchor = Anchor::start;
};

class Pen {
 public:
  explicit Pen(Drawing& drawing) : drawing_(drawing) {}

  // What the next shapes show.
  void show(AnyId of, Part part) {
    of_ = of;
    part_ = part;
  }
  void part(Part part) { part_ = part; }

  void box(Box box, Ink fill, Ink stroke, int radius = 0, int stroke_width = 10, Dash dash = Dash::solid);
  void line(Point from, Point to, Ink ink, int width, Dash dash = Dash::solid);
  void circle(Point centre, int radius, Ink fill, Ink stroke, int stroke_width = 10);
  void polygon(std::vector<Point> points, Ink fill, Ink stroke = Ink::none, int stroke_width = 10);
  // On the base line at `at`; cut to `most` pixels. Returns the width. Nothing for an empty text.
  int text(Point at, std::string_view text, const Style& style, int most);
  // Severity as shape and letter, 16 pixels wide, middle at `at`.
  void badge(Point at, Ink severity);

  // Opens an element; close() in reverse order.
  std::size_t open(AnyId of, Part part, Box hit, std::string title, std::string description = {});
  void close(std::size_t group);

 private:
  Shape shape() const { return {of_, part_}; }
  Drawing& drawing_;
  AnyId of_;
  Part part_ = Part::sheet;
};

} // namespace snug::layout
