#include "tests/support/overlaps.h"

#include <algorithm>

namespace snug::test {

namespace {

struct Thing {
  Box box;
  std::string what;
  AnyId of;
  Part part = Part::sheet;
};

struct Things {
  std::vector<Thing> cards, wires, labels;
};

bool is_wire(Part p) {
  switch (p) {
  case Part::wire:
  case Part::joint:
  case Part::rail:
  case Part::rail_end:
  case Part::riser:
  case Part::lane:
  case Part::socket:
  case Part::translator:
  case Part::pin:
    return true;
  default:
    return false;
  }
}

Box around(const LineShape& s) {
  const int half = (s.width + 19) / 20;
  const int x = std::min(s.from.x, s.to.x);
  const int y = std::min(s.from.y, s.to.y);
  const int w = std::max(s.from.x, s.to.x) - x;
  const int h = std::max(s.from.y, s.to.y) - y;
  return w == 0 ? Box{x - half, y, 2 * half, h} : Box{x, y - half, w, 2 * half};
}

struct Sorter {
  Things& things;
  void add_wire(const Shape& s, const Box& box) const {
    if (is_wire(s.part) || s.part == Part::badge)
      things.wires.push_back({box, to_text(s.of) + " line", s.of, s.part});
  }
  void operator()(const BoxShape& s) const { add_wire(s, s.box); }
  void operator()(const LineShape& s) const { add_wire(s, around(s)); }
  void operator()(const CircleShape& s) const {
    add_wire(s, {s.centre.x - s.radius, s.centre.y - s.radius, 2 * s.radius, 2 * s.radius});
  }
  void operator()(const PolygonShape& s) const {
    Box box{s.points[0].x, s.points[0].y, 0, 0};
    for (const Point p : s.points) {
      const int right = std::max(box.right(), p.x);
      const int bottom = std::max(box.bottom(), p.y);
      box.x = std::min(box.x, p.x);
      box.y = std::min(box.y, p.y);
      box.w = right - box.x;
      box.h = bottom - box.y;
    }
    add_wire(s, box);
  }
  void operator()(const TextShape& s) const {
    if (s.part != Part::badge) things.labels.push_back({s.box, '"' + s.text + '"', s.of, s.part});
  }
};

bool cut(const Box& a, const Box& b) { return a.overlaps(b) && !a.contains(b) && !b.contains(a); }

// A pin lies on the edge of its machine's card; wires begin there.
bool meets_card(const Thing& wire, const Thing& card) {
  return wire.part != Part::pin && wire.part != Part::badge && wire.box.overlaps(card.box);
}

} // namespace

std::vector<std::string> overlaps(const Drawing& drawing) {
  Things t;
  for (const AnyShape& s : drawing.shapes) std::visit(Sorter{t}, s);
  for (const Group& g : drawing.groups)
    if (g.part == Part::machine || g.part == Part::lan)
      t.cards.push_back({g.box, to_text(g.of), g.of, g.part});
  std::vector<std::string> out;
  const auto tell = [&out](const Thing& a, const Thing& b) { out.push_back(a.what + " over " + b.what); };
  for (std::size_t i = 0; i < t.cards.size(); ++i) {
    for (std::size_t j = i + 1; j < t.cards.size(); ++j)
      if (cut(t.cards[i].box, t.cards[j].box) || t.cards[i].box == t.cards[j].box)
        tell(t.cards[i], t.cards[j]);
    for (const Thing& w : t.wires)
      if (meets_card(w, t.cards[i])) tell(w, t.cards[i]);
    for (const Thing& l : t.labels)
      if (cut(l.box, t.cards[i].box)) tell(l, t.cards[i]);
  }
  const Box sheet{0, 0, drawing.width, drawing.height};
  for (std::size_t i = 0; i < t.labels.size(); ++i) {
    if (!sheet.contains(t.labels[i].box)) out.push_back(t.labels[i].what + " leaves the sheet");
    for (std::size_t j = i + 1; j < t.labels.size(); ++j)
      if (t.labels[i].box.overlaps(t.labels[j].box)) tell(t.labels[i], t.labels[j]);
    for (const Thing& w : t.wires)
      if (w.box.overlaps(t.labels[i].box)) tell(t.labels[i], w);
  }
  return out;
}

} // namespace snug::test
