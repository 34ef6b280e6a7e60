#include "core/layout/content_steps.h"
#include "core/layout/draw_parts.h"

#include <algorithm>

namespace snug::layout {

namespace {

constexpr int kRailWidth = 40; // tenths of a pixel
constexpr int kEnd = 8;        // half height of a closed end
constexpr int kTip = 10;

void closed_end(Pen& pen, int x, int y, Ink ink) {
  pen.part(Part::rail_end);
  pen.line({x, y - kEnd}, {x, y + kEnd}, ink, 30);
}

// From the frame to the LAN: along the lane where one is needed.
void lane(Pen& pen, const Scene& scene, std::uint32_t r, Point from, int width, Dash dash) {
  const RailText& rail = scene.content.rails[r];
  const Box& lan = scene.places.lans[rail.lan];
  const int x = scene.places.lane_x[r];
  const int y = scene.places.lan_y[r];
  pen.part(Part::lane);
  if (x == 0) {
    pen.line(from, {lan.right(), from.y}, rail.ink, width, dash);
    return;
  }
  pen.line(from, {x, from.y}, rail.ink, width, dash);
  pen.line({x, from.y}, {x, y}, rail.ink, width, dash);
  pen.line({x, y}, {lan.right(), y}, rail.ink, width, dash);
}

// One-way tip in the frame, translator behind it. Returns where the rail begins.
int way_out(Pen& pen, const Scene& scene, std::uint32_t r, int y) {
  const int frame = scene.places.frame.x;
  const Ink ink = scene.content.rails[r].ink;
  if (scene.content.rails[r].lan != kNone) lane(pen, scene, r, {frame - kTip, y}, 15, Dash::fine);
  pen.part(Part::translator);
  pen.polygon({{frame - kTip, y}, {frame + 4, y - 8}, {frame + 4, y + 8}}, ink);
  pen.box({frame + 8, y - 6, 12, 12}, Ink::inside, ink, 2, 20);
  return frame + 20;
}

void draw_name(Pen& pen, const Scene& scene, const RailText& rail, int y) {
  const Places& p = scene.places;
  pen.part(Part::name);
  draw_square(pen, {p.names_left, y - 21}, rail, SquareKind::joined);
  const int x = p.names_left + kSquare + 6;
  const int badge = rail.mark.any ? 22 : 0;
  const int w = pen.text({x, y - 10}, rail.name, {kName, rail.ink, Weight::semibold},
                         p.names_width - kSquare - 6 - badge);
  int line = y + 15;
  for (const std::string& detail : rail.details) {
    pen.text({p.names_left, line}, detail, {kSmall, Ink::muted}, p.names_width);
    line += kLine;
  }
  if (!rail.mark.any) return;
  pen.part(Part::badge);
  pen.badge({x + w + 13, y - 14}, ink_of(rail.mark.severity));
}

// Whether a stretch and its name are seen, or lead out of the frame where they may be.
bool is_seen(const Scene& scene, const RailText& rail, const Stretch& s) {
  const Box& only = scene.options.only;
  const int below = kSquare + kLine * static_cast<int>(rail.details.size());
  return only.w == 0 || (s.first && rail.lan != kNone) ||
         (s.y - 40 < only.bottom() && only.y < s.y + below + kLine);
}

void draw_stretch(Pen& pen, const Scene& scene, const Stretch& s) {
  const RailText& rail = scene.content.rails[s.rail];
  const Places& p = scene.places;
  const int riser = p.riser_x[s.rail];
  const int right = riser != 0 ? riser : p.rails_right;
  int left = p.rails_left;
  if (s.first && rail.type == SegmentKind::nat) left = way_out(pen, scene, s.rail, s.y);
  if (s.first && rail.type == SegmentKind::bridged) {
    if (rail.lan != kNone) lane(pen, scene, s.rail, {p.rails_left, s.y}, kRailWidth, rail.dash);
  }
  pen.part(Part::rail);
  pen.line({left, s.y}, {right, s.y}, rail.ink, kRailWidth, rail.dash);
  if (rail.type == SegmentKind::isolated) closed_end(pen, left, s.y, rail.ink);
  if (riser == 0) closed_end(pen, right, s.y, rail.ink);
  draw_name(pen, scene, rail, s.y);
}

void draw_socket(Pen& pen, const Scene& scene, std::uint32_t r, int y) {
  const RailText& rail = scene.content.rails[r];
  const Places& p = scene.places;
  const int from = p.riser_x[r] != 0 ? p.riser_x[r] : p.rails_right;
  pen.part(Part::socket);
  pen.line({from, y}, {p.frame.right() - 8, y}, rail.ink, 15);
  pen.box({p.frame.right() - 8, y - 7, 16, 14}, Ink::inside, rail.ink, 4, 20);
  pen.text({p.frame.right() - 12, y - 6}, rail.socket_text, {kSmall, rail.ink, Weight::regular, Anchor::end},
           400);
}

int y_in(const Row& row, std::uint32_t rail) {
  const auto found = std::find_if(row.stretches.begin(), row.stretches.end(),
                                  [rail](const Stretch& s) { return s.rail == rail; });
  return found == row.stretches.end() ? 0 : found->y;
}

void draw_rail(Pen& pen, const Scene& scene, std::uint32_t r) {
  const RailText& rail = scene.content.rails[r];
  const Places& p = scene.places;
  const auto& rows = p.rows_of[r];
  const int first = y_in(p.rows[rows.front()], r);
  const int below = 6 + kLine * std::max(1, static_cast<int>(rail.details.size()));
  const Box hit{p.names_left, first - 22, p.rails_right - p.names_left, 22 + below};
  const std::size_t group = pen.open(rail.id, Part::rail, hit, rail.title, rail.description);
  for (const std::uint32_t row : rows)
    for (const Stretch& s : p.rows[row].stretches)
      if (s.rail == r && is_seen(scene, rail, s)) draw_stretch(pen, scene, s);
  if (p.riser_x[r] != 0) {
    pen.part(Part::riser);
    pen.line({p.riser_x[r], first}, {p.riser_x[r], y_in(p.rows[rows.back()], r)}, rail.ink, 30, rail.dash);
    for (const std::uint32_t row : rows)
      pen.circle({p.riser_x[r], y_in(p.rows[row], r)}, 4, rail.ink, Ink::none, 0);
  }
  if (rail.socket) draw_socket(pen, scene, r, first);
  pen.close(group);
}

// Behind a joint's label, which begins at `at`; letters with a tail stay off the rail's strokes.
void draw_duties(Pen& pen, const DrawOptions& o, const RailText& rail, const Plug& plug, Point at) {
  constexpr int kLift = 2;
  int x = at.x + widest(plug.lines, kSmall);
  const int y = at.y - kLift;
  for (const auto& [part, words] : duties_of(plug, o)) {
    const int w = width_of(words, kSmall);
    x += kDutyGap;
    pen.part(part);
    pen.box({x, y - 10, w + 2 * kDutyPad, 13}, Ink::inside, rail.ink, 4, 10);
    pen.text({x + kDutyPad, y}, words, {kSmall, rail.ink}, w + 1);
    x += w + 2 * kDutyPad;
  }
}

void draw_wire(Pen& pen, const Scene& scene, const Plug& plug, Point pin, int y) {
  const RailText& rail = scene.content.rails[plug.rail];
  const Dash dash = plug.hollow ? Dash::wire : Dash::solid;
  pen.part(Part::wire);
  const int top = pin.y + 5;
  if (plug.connected) {
    pen.line({pin.x, top}, {pin.x, y - 4}, rail.ink, 18, dash);
  } else { // unplugged: the wire is broken below the pin
    pen.line({pin.x, top}, {pin.x, top + 4}, rail.ink, 18);
    pen.line({pin.x - 4, top + 4}, {pin.x + 4, top + 4}, rail.ink, 18);
    pen.line({pin.x, top + 11}, {pin.x, y - 4}, rail.ink, 10, Dash::fine);
  }
  pen.part(Part::joint);
  pen.circle({pin.x, y}, 4, Ink::inside, rail.ink, 20);
  pen.part(Part::address);
  int line = y - 8 - kLine * (static_cast<int>(plug.lines.size()) - 1);
  for (const std::string& text : plug.lines) {
    pen.text({pin.x + kLabelGap, line}, text, {kSmall, rail.ink}, 400);
    line += kLine;
  }
  draw_duties(pen, scene.options, rail, plug, {pin.x + kLabelGap, y - 8});
}

} // namespace

void draw_rails(Pen& pen, const Scene& scene) {
  for (std::uint32_t r = 0; r < scene.content.rails.size(); ++r) draw_rail(pen, scene, r);
}

void draw_wires(Pen& pen, const Scene& scene) {
  const Box& only = scene.options.only;
  std::vector<int> y(scene.content.rails.size());
  for (const Row& row : scene.places.rows) {
    for (const Stretch& s : row.stretches) y[s.rail] = s.y;
    for (const std::uint32_t i : row.machines) {
      const MachineText& m = scene.content.machines[i];
      const MachinePlace& place = scene.places.machines[i];
      constexpr int kLabels = 140; // right of a wire
      const Box around{place.box.x, row.top, place.box.w + kLabels, row.bottom - row.top};
      if (only.w != 0 && !only.overlaps(around)) continue;
      for (std::size_t k = 0; k < m.plugs.size();) {
        const CardId card = m.plugs[k].card;
        const Point pin = place.plugs[k];
        const std::size_t group = pen.open(card, Part::wire, {pin.x - 8, pin.y - 8, 16, 16}, {});
        for (; k < m.plugs.size() && m.plugs[k].card == card; ++k) {
          const Plug& plug = m.plugs[k];
          pen.show(card, Part::wire);
          if (plug.rail != kNone) draw_wire(pen, scene, plug, place.plugs[k], y[plug.rail]);
        }
        pen.close(group);
      }
    }
  }
}

} // namespace snug::layout
