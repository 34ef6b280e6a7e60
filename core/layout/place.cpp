#include "core/layout/place.h"

#include "core/layout/metrics.h"

#include <algorithm>

namespace snug::layout {

namespace {

constexpr int kRulerHeight = 70;
constexpr int kFrameHeader = 40;
constexpr int kFrameInset = 26; // from the frame to where rails begin
constexpr int kLanLine = 14;

int lan_width(const LanText& lan) {
  return std::max(width_of(lan.name, kName, Weight::semibold), widest(lan.lines, kSmall)) + 24;
}
int lan_height(const LanText& lan) { return 30 + kLanLine * static_cast<int>(lan.lines.size()); }

int names_width(const Content& content) {
  int w = 144;
  for (const RailText& r : content.rails) {
    const int badge = 22;
    w = std::max(w, kSquare + 6 + std::min(width_of(r.name, kName, Weight::semibold), 220) + badge);
    // Prefix and kind; what follows names machines, whose names must not move the cards.
    w = std::max(w, std::min(width_of(r.details.front(), kSmall), 260));
  }
  return stepped(w, kNameStep);
}

// Everything left of the machines: the strip outside and the column of names. None of it depends on machines.
void place_left(const Content& content, const DrawOptions& options, Places& p) {
  int boxes = 0;
  for (const LanText& lan : content.lans) boxes = std::max(boxes, lan_width(lan));
  const int lanes = kLaneGap * (2 * static_cast<int>(content.lans.size()) + 1);
  const int strip = content.lans.empty() ? 0 : kMargin + stepped(boxes, kNameStep) + lanes + kLaneGap;
  const int top = kMargin + (options.show_ruler ? kRulerHeight : 0);
  p.outside = {kMargin, top, 0, 0};
  p.frame = {kMargin + std::max(strip, 16), top + 14, 0, 0};
  p.rails_left = p.frame.x + kFrameInset;
  p.names_left = p.rails_left + 14;
  p.names_width = names_width(content);
}

// Which rows have a stretch of which rail. What no row uses stands in the last one.
void choose_stretches(const Content& content, Places& p) {
  p.rows_of.assign(content.rails.size(), {});
  for (std::uint32_t row = 0; row < p.rows.size(); ++row)
    for (const std::uint32_t m : p.rows[row].machines)
      for (const Plug& plug : content.machines[m].plugs)
        if (plug.rail != kNone && (p.rows_of[plug.rail].empty() || p.rows_of[plug.rail].back() != row))
          p.rows_of[plug.rail].push_back(row);
  for (std::uint32_t r = 0; r < content.rails.size(); ++r) {
    if (p.rows_of[r].empty()) p.rows_of[r].push_back(static_cast<std::uint32_t>(p.rows.size() - 1));
    for (const std::uint32_t row : p.rows_of[r])
      p.rows[row].stretches.push_back({r, 0, row == p.rows_of[r].front()});
  }
}

void stack_rows(const Content& content, Places& p) {
  int y = p.frame.y + kFrameHeader;
  for (Row& row : p.rows) {
    row.top = y;
    for (const std::uint32_t m : row.machines) {
      p.machines[m].box.y += y;
      for (Point& pin : p.machines[m].plugs) pin.y += y;
    }
    row.cards_bottom += y;
    y = row.cards_bottom + kPinDrop;
    for (Stretch& s : row.stretches) {
      const RailText& rail = content.rails[s.rail];
      s.y = y + 9 + kLine * lines_above(content, row, s.rail);
      y = s.y + 11 + kLine * static_cast<int>(std::max<std::size_t>(rail.details.size(), 1));
    }
    row.bottom = y;
    y += kRowGap;
  }
}

// Where the rails end, which of them have a riser, and the frame's right and bottom edge.
void place_right(const Content& content, Places& p) {
  int right = p.names_left + p.names_width + 120;
  for (const Row& row : p.rows) right = std::max(right, row.right);
  right = std::max(right + 8, p.frame.x + kMinFrame - 60);
  p.rails_right = right;
  p.riser_x.assign(content.rails.size(), 0);
  int x = right;
  int socket = 0;
  for (std::size_t r = content.rails.size(); r-- > 0;) {
    if (p.rows_of[r].size() > 1) p.riser_x[r] = (x += kLaneGap);
    if (content.rails[r].socket)
      socket = std::max(socket, width_of(content.rails[r].socket_text, kSmall) + 26);
  }
  p.frame.w = x + std::max(socket, 20) - p.frame.x;
  p.frame.h = p.rows.back().bottom + 14 - p.frame.y;
}

int first_y(const Places& p, std::uint32_t rail) {
  const Row& row = p.rows[p.rows_of[rail].front()];
  for (const Stretch& s : row.stretches)
    if (s.rail == rail) return s.y;
  return row.bottom;
}

// LAN boxes stand beside the first rail that leads to them, without overlap, from the top.
void place_lans(const Content& content, Places& p) {
  struct Wish {
    int y;
    std::uint32_t lan;
  };
  std::vector<Wish> wishes;
  int widest_box = 0;
  for (std::uint32_t l = 0; l < content.lans.size(); ++l) {
    Wish wish{0x7fff'ffff, l};
    widest_box = std::max(widest_box, lan_width(content.lans[l]));
    const int h = lan_height(content.lans[l]);
    for (std::uint32_t r = 0; r < content.rails.size(); ++r) {
      if (content.rails[r].lan != l) continue;
      const bool nat = content.rails[r].type == SegmentKind::nat;
      wish.y = std::min(wish.y, first_y(p, r) - (nat ? h - 10 : h / 2));
    }
    wishes.push_back(wish);
  }
  std::stable_sort(wishes.begin(), wishes.end(), [](const Wish& a, const Wish& b) { return a.y < b.y; });
  p.lans.assign(content.lans.size(), {});
  int y = p.frame.y + 22;
  for (const Wish& wish : wishes) {
    const int h = lan_height(content.lans[wish.lan]);
    y = std::max(y, wish.y == 0x7fff'ffff ? y : wish.y);
    p.lans[wish.lan] = {p.outside.x + kLaneGap, y, stepped(widest_box, kNameStep), h};
    y += h + 16;
  }
  p.frame.h = std::max(p.frame.h, y - p.frame.y);
}

// Lines between frame and LANs: one lane for each LAN and kind, unless the line is straight.
void place_lanes(const Content& content, Places& p) {
  p.lane_x.assign(content.rails.size(), 0);
  p.lan_y.assign(content.rails.size(), 0);
  for (std::uint32_t r = 0; r < content.rails.size(); ++r) {
    const RailText& rail = content.rails[r];
    if (rail.lan == kNone) continue;
    const bool nat = rail.type == SegmentKind::nat;
    const Box& box = p.lans[rail.lan];
    p.lan_y[r] = nat ? box.bottom() - 10 : box.y + box.h / 2;
    const int lane = 2 * static_cast<int>(rail.lan) + (nat ? 1 : 0);
    if (first_y(p, r) != p.lan_y[r]) p.lane_x[r] = box.right() + kLaneGap * (lane + 1);
  }
}

void place_guests(const Content& content, Places& p) {
  const auto shift = [](Box& box, Point by) {
    if (box.w == 0) return;
    box.x += by.x;
    box.y += by.y;
  };
  for (std::size_t i = 0; i < content.machines.size(); ++i) {
    MachinePlace& m = p.machines[i];
    const Point corner{m.box.x, m.box.y};
    shift(m.bar, corner);
    shift(m.room, corner);
    for (const std::uint32_t g : content.machines[i].guests) {
      shift(p.machines[g].box, corner);
      for (Point& square : p.machines[g].plugs)
        square = {square.x + p.machines[g].box.x, square.y + p.machines[g].box.y};
    }
  }
}

} // namespace

Places place(const Content& content, const DrawOptions& options) {
  Places p;
  place_left(content, options, p);
  size_machines(content, p);
  fill_rows(content, p, p.names_left + p.names_width + 20);
  choose_stretches(content, p);
  stack_rows(content, p);
  place_guests(content, p);
  place_right(content, p);
  place_lans(content, p);
  place_lanes(content, p);
  p.outside.w = p.frame.right() + 14 - p.outside.x;
  p.outside.h = p.frame.bottom() + 14 - p.outside.y;
  if (options.show_ruler) p.ruler = {p.frame.x, kMargin, p.frame.w, kRulerHeight - 14};
  p.width = p.outside.right() + kMargin;
  p.height = p.outside.bottom() + kMargin;
  return p;
}

} // namespace snug::layout
