#include "core/layout/pen.h"

namespace snug::layout {

void Pen::box(Box box, Ink fill, Ink stroke, int radius, int stroke_width, Dash dash) {
  drawing_.shapes.emplace_back(BoxShape{shape(), box, radius, fill, stroke, stroke_width, dash});
}

void Pen::line(Point from, Point to, Ink ink, int width, Dash dash) {
  drawing_.shapes.emplace_back(LineShape{shape(), from, to, ink, width, dash});
}

void Pen::circle(Point centre, int radius, Ink fill, Ink stroke, int stroke_width) {
  drawing_.shapes.emplace_back(CircleShape{shape(), centre, radius, fill, stroke, stroke_width});
}

void Pen::polygon(std::vector<Point> points, Ink fill, Ink stroke, int stroke_width) {
  drawing_.shapes.emplace_back(PolygonShape{shape(), std::move(points), fill, stroke, stroke_width});
}

int Pen::text(Point at, std::string_view text, const Style& style, int most) {
  if (text.empty()) return 0;
  TextShape t{shape(), {}, at.y, style.size, style.weight, style.anchor, style.ink, 0, {}};
  t.text = fitted(text, style.size, style.weight, most);
  t.length = text_width(t.text, style.size * kPixel, style.weight);
  const int w = (t.length + kPixel - 1) / kPixel;
  const int left = style.anchor == Anchor::start ? at.x
                   : style.anchor == Anchor::end ? at.x - w
                                                 : at.x - w / 2;
  // Inter's capitals and ascenders reach 0.76 em above the base line, its descenders 0.2 em below.
  const int above = (style.size * 4 + 4) / 5;
  t.box = {left, at.y - above, w, above + style.size / 5 + 1};
  drawing_.shapes.emplace_back(std::move(t));
  return w;
}

void Pen::badge(Point at, Ink severity) {
  const auto [x, y] = at;
  if (severity == Ink::error) {
    polygon({{x - 3, y - 8},
             {x + 3, y - 8},
             {x + 8, y - 3},
             {x + 8, y + 3},
             {x + 3, y + 8},
             {x - 3, y + 8},
             {x - 8, y + 3},
             {x - 8, y - 3}},
            severity, Ink::inside);
  } else if (severity == Ink::caution) {
    polygon({{x, y - 9}, {x + 9, y + 7}, {x - 9, y + 7}}, severity, Ink::inside);
  } else {
    circle(at, 8, severity, Ink::inside);
  }
  const bool note = severity == Ink::info;
  text({x, y + (severity == Ink::caution ? 5 : 4)}, note ? "i" : "!",
       {kPlain, Ink::on_fill, Weight::semibold, Anchor::middle}, 12);
}

std::size_t Pen::open(AnyId of, Part part, Box hit, std::string title, std::string description) {
  const auto first = static_cast<std::uint32_t>(drawing_.shapes.size());
  drawing_.groups.push_back({of, part, first, first, hit, std::move(title), std::move(description)});
  show(of, part);
  return drawing_.groups.size() - 1;
}

void Pen::close(std::size_t group) {
  drawing_.groups[group].end = static_cast<std::uint32_t>(drawing_.shapes.size());
}

} // namespace snug::layout
