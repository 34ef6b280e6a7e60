#include "core/layout/content_steps.h"
#include "core/layout/metrics.h"
#include "core/layout/place.h"

#include <algorithm>

namespace snug::layout {

namespace {

struct Header {
  int pad, name, memory, text, name_line, bar, below; // sizes, base lines and heights from the card's top
};
constexpr Header kOnPc{12, kTitle, kPlain, kPlain, 22, 60, 76};
constexpr Header kInRoom{10, kName, kSmall, kSmall, 19, 54, 64};

bool on_pc(const MachineText& m) { return m.carrier == kNone; }
const Header& header(const MachineText& m) { return on_pc(m) ? kOnPc : kInRoom; }

int measured(const MachineText& m) {
  const Header& h = header(m);
  const int memory = width_of(m.memory, h.memory, Weight::semibold) + (m.memory.empty() ? 0 : 10);
  const int name = std::min(width_of(m.name, h.name, Weight::semibold), kCardCap - memory);
  const int power = 14; // kept for the power mark, so that switching off moves nothing
  const int rest = std::max({width_of(m.role, h.text), width_of(m.processors, kSmall),
                             width_of(m.bar_text, kSmall), width_of(m.room_text, kPlain) + 16});
  return std::max(name + memory + power, std::min(rest, kCardCap));
}

// Squares of a guest in lines no wider than `most`; returns the size of the block.
Point place_squares(const MachineText& m, MachinePlace& place, Point corner, int most) {
  int x = 0;
  int y = 0;
  int line = 0;
  Point size;
  place.plugs.reserve(m.plugs.size());
  for (const Plug& plug : m.plugs) {
    const int w = std::max(kSquare, plug.lines_width);
    const int h = kSquare + (plug.lines.empty() ? 0 : 2) + kLine * static_cast<int>(plug.lines.size());
    if (x > 0 && x + w > most) {
      x = 0;
      y += line + 6;
      line = 0;
    }
    place.plugs.push_back({corner.x + x, corner.y + y});
    x += w + 10;
    line = std::max(line, h);
    size = {std::max(size.x, x - 10), y + line};
  }
  return size;
}

// Guests from left to right in rows; a new band begins a new row. Their boxes are relative to `corner`;
// returns the size of the block.
Point flow_guests(const Content& content, const MachineText& m, Places& places) {
  const int most = row_width(m.guests.size(), kRoomRow, kRoomFew);
  Point at;
  Point size;
  int line = 0;
  int band = m.guests.empty() ? 0 : content.machines[m.guests.front()].band;
  for (const std::uint32_t g : m.guests) {
    Box& box = places.machines[g].box;
    const bool new_band = content.machines[g].band != band;
    band = content.machines[g].band;
    if (at.x > 0 && (new_band || at.x + box.w > most)) at = {0, at.y + line + kGuestGap};
    if (at.x == 0) line = 0;
    box.x = at.x;
    box.y = at.y;
    at.x += box.w + kGuestGap;
    line = std::max(line, box.h);
    size = {std::max(size.x, at.x - kGuestGap), at.y + line};
  }
  return size;
}

void size_hypervisor(const Content& content, std::uint32_t place, Places& places) {
  const MachineText& m = content.machines[place];
  MachinePlace& p = places.machines[place];
  const Header& h = header(m);
  const Point block = flow_guests(content, m, places);
  int inner = std::max({m.text_width, block.x, on_pc(m) ? 150 : 130});
  int y = h.bar + 32; // below the words under the bar, with room for a guest's badge
  Point squares;
  if (!on_pc(m)) squares = place_squares(m, p, {h.pad, 0}, std::max(inner, kCardCap));
  inner = std::max(inner, squares.x);
  p.bar = {h.pad, h.bar, inner, 6};
  for (const std::uint32_t g : m.guests) {
    places.machines[g].box.x += h.pad;
    places.machines[g].box.y += y;
  }
  if (block.y > 0) y += block.y + kGuestGap;
  if (!m.room_text.empty()) {
    p.room = {h.pad, y, inner, 32};
    y += 32 + kGuestGap;
  }
  for (Point& corner : p.plugs) corner.y += y;
  if (squares.y > 0) y += squares.y + kGuestGap;
  p.box = {0, 0, inner + 2 * h.pad, y + 2};
}

void size_plain(const MachineText& m, MachinePlace& p) {
  const Header& h = header(m);
  int inner = std::max(m.text_width, on_pc(m) ? 104 : 118);
  Point squares;
  if (!on_pc(m)) squares = place_squares(m, p, {h.pad, h.below}, std::max(inner, kCardCap));
  inner = std::max(inner, squares.x);
  p.bar = {h.pad, h.bar, inner, on_pc(m) ? 5 : 4};
  p.box = {0, 0, inner + 2 * h.pad, h.below + (squares.y > 0 ? squares.y + 8 : 0)};
}

} // namespace

void measure(Content& content) {
  for (MachineText& m : content.machines)
    if (m.text_width < 0) m.text_width = measured(m);
}

void size_machines(const Content& content, Places& places) {
  places.machines.assign(content.machines.size(), {});
  for (std::size_t i = content.machines.size(); i-- > 0;) {
    if (content.machines[i].hypervisor) {
      size_hypervisor(content, static_cast<std::uint32_t>(i), places);
    } else {
      size_plain(content.machines[i], places.machines[i]);
    }
  }
}

} // namespace snug::layout
