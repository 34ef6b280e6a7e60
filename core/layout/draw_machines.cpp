#include "core/layout/draw_parts.h"
#include "core/text/hand_text.h"

#include <algorithm>
#include <optional>

namespace snug::layout {

Ink ink_of(Severity s) {
  return s == Severity::error ? Ink::error : s == Severity::caution ? Ink::caution : Ink::info;
}

Ink ink_of(Verdict v, Ink fits) {
  return v == Verdict::over ? Ink::error : v == Verdict::tight ? Ink::caution : fits;
}

void draw_square(Pen& pen, Point corner, const RailText& rail, SquareKind kind) {
  const bool joined = kind == SquareKind::joined;
  pen.box({corner.x, corner.y, kSquare, kSquare}, joined ? rail.ink : Ink::card, rail.ink, 3, 15,
          kind == SquareKind::island ? Dash::fine : Dash::solid);
  const int size = rail.letter.size() > 1 ? 8 : kSmall;
  pen.text({corner.x + kSquare / 2, corner.y + 11 - (size == 8 ? 1 : 0)}, rail.letter,
           {size, joined ? Ink::on_fill : rail.ink, Weight::semibold, Anchor::middle}, kSquare);
}

namespace {

void draw_header(Pen& pen, const Scene& scene, const MachineText& m, const Box& box) {
  const bool on_pc = m.carrier == kNone;
  const int pad = on_pc ? 12 : 10;
  const int small = on_pc ? kPlain : kSmall;
  const int name_y = box.y + (on_pc ? 22 : 19);
  const int right = box.right() - pad;
  const Ink ink = m.on ? Ink::text : Ink::muted;
  int most = box.w - 2 * pad;
  const int memory =
      pen.text({right, name_y}, m.memory, {small, ink, Weight::semibold, Anchor::end}, most / 2);
  if (scene.content.power) {
    pen.part(Part::power);
    pen.circle({right - memory - 9, name_y - 4}, 4, m.on ? Ink::ok : Ink::none, m.on ? Ink::ok : Ink::muted,
               15);
    pen.part(Part::machine);
  }
  most -= memory + 16;
  pen.text({box.x + pad, name_y}, m.name, {on_pc ? kTitle : kName, ink, Weight::semibold}, most);
  const int width = box.w - 2 * pad;
  pen.text({box.x + pad, name_y + (on_pc ? 16 : 14)}, m.role, {small, Ink::muted}, width);
  pen.text({box.x + pad, name_y + (on_pc ? 31 : 27)}, m.processors, {kSmall, Ink::muted}, width);
}

void draw_bar(Pen& pen, const MachineText& m, const MachinePlace& place) {
  if (m.bar.whole <= 0) return;
  const Box& bar = place.bar;
  pen.part(Part::meter);
  pen.box(bar, Ink::track, Ink::none, bar.h / 2, 0);
  const std::int64_t part = std::clamp<std::int64_t>(m.bar.part, 0, m.bar.whole);
  const int w = static_cast<int>(part * bar.w / m.bar.whole);
  const Ink fits = m.hypervisor ? Ink::inner_bar : Ink::bar;
  if (w > 0)
    pen.box({bar.x, bar.y, std::max(w, bar.h), bar.h}, ink_of(m.bar.verdict, fits), Ink::none, bar.h / 2, 0);
  pen.text({bar.x, bar.bottom() + 12}, m.bar_text, {kSmall, ink_of(m.bar.verdict, Ink::muted)}, bar.w);
}

void draw_room(Pen& pen, const MachineText& m, const Box& room) {
  if (room.w == 0) return;
  const Ink ink = m.room_over ? Ink::error : Ink::muted;
  pen.part(Part::room);
  pen.box(room, Ink::none, ink, 6, 10, Dash::wire);
  pen.text({room.x + room.w / 2, room.y + room.h / 2 + 4}, m.room_text,
           {kPlain, ink, Weight::regular, Anchor::middle}, room.w - 8);
}

// A bar joins the pins of a card that has several.
void draw_card_tabs(Pen& pen, const MachineText& m, const MachinePlace& place) {
  pen.part(Part::pin);
  for (std::size_t i = 0; i < m.plugs.size();) {
    std::size_t j = i + 1;
    while (j < m.plugs.size() && m.plugs[j].card == m.plugs[i].card) ++j;
    if (j - i > 1) {
      const int left = place.plugs[i].x - 8;
      pen.box({left, place.plugs[i].y - 7, place.plugs[j - 1].x + 8 - left, 10}, Ink::track, Ink::edge, 3);
    }
    i = j;
  }
}

void draw_pins(Pen& pen, const Scene& scene, const MachineText& m, const MachinePlace& place) {
  draw_card_tabs(pen, m, place);
  for (std::size_t i = 0; i < m.plugs.size(); ++i) {
    const Plug& plug = m.plugs[i];
    const Point at = place.plugs[i];
    const Ink ink = plug.rail == kNone ? Ink::muted : scene.content.rails[plug.rail].ink;
    const bool solid = !plug.hollow && plug.rail != kNone;
    pen.show(plug.card, Part::pin);
    pen.box({at.x - 5, at.y - 5, 10, 10}, solid ? ink : Ink::card, ink, 2, 15);
  }
}

void draw_squares(Pen& pen, const Scene& scene, const MachineText& m, const MachinePlace& place) {
  for (std::size_t i = 0; i < m.plugs.size(); ++i) {
    const Plug& plug = m.plugs[i];
    const Point at = place.plugs[i];
    pen.show(plug.card, Part::square);
    if (plug.rail == kNone) {
      pen.box({at.x, at.y, kSquare, kSquare}, Ink::none, Ink::muted, 3, 10, Dash::fine);
      continue;
    }
    const RailText& rail = scene.content.rails[plug.rail];
    draw_square(pen, at, rail,
                !plug.joined || !plug.connected ? SquareKind::island
                : plug.hollow                   ? SquareKind::carries
                                                : SquareKind::joined);
    pen.part(Part::address);
    int y = at.y + kSquare + 2 + kLine - 2;
    for (const std::string& line : plug.lines) {
      pen.text({at.x, y}, line, {kSmall, rail.ink}, 400);
      y += kLine;
    }
  }
}

// A tack through the upper edge, left.
void draw_tack(Pen& pen, const Box& card) {
  const Point at{card.x + 13, card.y - 3};
  pen.line({at.x, at.y}, {at.x, at.y + 10}, Ink::muted, 20);
  pen.circle(at, 4, Ink::card, Ink::muted, 20);
}

// With its pins and its badge.
Box around(const Box& b) { return {b.x - 8, b.y - 10, b.w + 18, b.h + 18}; }

void draw_machine(Pen& pen, const Scene& scene, std::size_t i) {
  const MachineText& m = scene.content.machines[i];
  const MachinePlace& place = scene.places.machines[i];
  const std::size_t group = pen.open(m.id, Part::machine, place.box, m.title, m.description);
  pen.box(place.box, m.hypervisor ? Ink::room : Ink::card, Ink::edge, m.carrier == kNone ? 9 : 7, 12,
          m.on ? Dash::solid : Dash::wire);
  draw_header(pen, scene, m, place.box);
  draw_bar(pen, m, place);
  draw_room(pen, m, place.room);
  if (m.carrier == kNone) {
    draw_pins(pen, scene, m, place);
  } else {
    draw_squares(pen, scene, m, place);
  }
  if (m.held && scene.options.show_held) {
    pen.show(m.id, Part::held);
    draw_tack(pen, place.box);
  }
  if (m.mark.any) {
    pen.show(m.id, Part::badge);
    pen.badge({place.box.right() - 3, place.box.y + 1}, ink_of(m.mark.severity));
  }
  pen.close(group);
}

} // namespace

namespace {

// Left of its first row: a grip and its number.
void draw_band_name(Pen& pen, const Scene& scene, const Row& row, int number) {
  const int x = scene.places.names_left, y = row.top + 18;
  pen.show(scene.content.machines[row.machines.front()].id, Part::band);
  for (const int dx : {2, 7})
    for (const int dy : {-8, -4, 0}) pen.circle({x + dx, y + dy}, 1, Ink::muted, Ink::none, 0);
  pen.text({x + 14, y}, scene.options.words(say(text::hand_band, std::to_string(number))),
           {kPlain, Ink::muted, Weight::semibold}, scene.places.names_width - 14);
}

void draw_band_names(Pen& pen, const Scene& scene) {
  const auto& machines = scene.content.machines;
  const auto& top = scene.content.top;
  if (top.empty() || machines[top.front()].band == machines[top.back()].band) return;
  int number = 0;
  std::optional<int> band;
  for (const Row& row : scene.places.rows) {
    const int own = machines[row.machines.front()].band;
    if (band == own) continue;
    band = own;
    draw_band_name(pen, scene, row, ++number);
  }
}

} // namespace

void draw_machines(Pen& pen, const Scene& scene) {
  if (scene.options.show_bands) draw_band_names(pen, scene);
  const Box& only = scene.options.only;
  for (std::size_t i = 0; i < scene.content.machines.size(); ++i)
    if (only.w == 0 || only.overlaps(around(scene.places.machines[i].box))) draw_machine(pen, scene, i);
}

} // namespace snug::layout
