#include "core/layout/draw_parts.h"
#include "core/text/layout_text.h"

#include <algorithm>
#include <functional>

namespace snug::layout {

namespace {

constexpr int kEntryWidth = 332;
constexpr int kEntryHeight = 24;
constexpr int kSample = 58; // width of the sample
constexpr int kTitleWidth = 330;
constexpr std::size_t kTitleLines = 3;

struct Entry {
  std::function<void(Pen&, Point)> sample; // drawn right of and around the point
  const Template* words;
};

RailText sample_rail() {
  RailText rail;
  rail.letter.push_back('A'); // g++ 12 warns of an overlap in the assignment of a literal that is not there
  rail.ink = Ink::slate;
  return rail;
}

void ends(Pen& pen, Point at, bool left, bool right) {
  pen.line(at, {at.x + 34, at.y}, Ink::slate, 40);
  if (left) pen.line({at.x, at.y - 7}, {at.x, at.y + 7}, Ink::slate, 30);
  if (right) pen.line({at.x + 34, at.y - 7}, {at.x + 34, at.y + 7}, Ink::slate, 30);
}

void frame_edge(Pen& pen, int x, int y) { pen.line({x, y - 10}, {x, y + 10}, Ink::frame, 25); }

void nat_sample(Pen& pen, Point at) {
  pen.line({at.x + 16, at.y}, {at.x + 34, at.y}, Ink::slate, 40);
  pen.line({at.x + 34, at.y - 7}, {at.x + 34, at.y + 7}, Ink::slate, 30);
  frame_edge(pen, at.x + 10, at.y);
  pen.polygon({{at.x, at.y}, {at.x + 14, at.y - 8}, {at.x + 14, at.y + 8}}, Ink::slate);
}

void pin_sample(Pen& pen, Point at, bool hollow) {
  pen.line({at.x + 10, at.y}, {at.x + 30, at.y}, Ink::slate, 18, hollow ? Dash::wire : Dash::solid);
  pen.box({at.x, at.y - 5, 10, 10}, hollow ? Ink::card : Ink::slate, Ink::slate, 2, 15);
  pen.circle({at.x + 33, at.y}, 4, Ink::inside, Ink::slate, 20);
}

void trunk_sample(Pen& pen, Point at) {
  pen.box({at.x, at.y - 5, 36, 10}, Ink::track, Ink::edge, 3);
  for (const int x : {3, 23}) pen.box({at.x + x, at.y - 5, 10, 10}, Ink::slate, Ink::slate, 2, 15);
}

// The patterns of the first rails, as they are drawn.
void pattern_sample(Pen& pen, Point at, const std::vector<RailText>& rails) {
  int y = at.y - 8;
  for (const RailText& rail : rails) {
    if (y > at.y + 8) return;
    if (rail.dash == Dash::solid) continue;
    pen.line({at.x, y}, {at.x + 44, y}, rail.ink, 30, rail.dash);
    y += 8;
  }
}

bool several_pins(const MachineText& m) {
  for (std::size_t i = 1; i < m.plugs.size(); ++i)
    if (m.carrier == kNone && m.plugs[i].card == m.plugs[i - 1].card) return true;
  return false;
}

void bar_sample(Pen& pen, Point at, Ink ink) {
  pen.box({at.x, at.y - 3, 38, 6}, Ink::track, Ink::none, 3, 0);
  pen.box({at.x, at.y - 3, 22, 6}, ink, Ink::none, 3, 0);
}

void power_sample(Pen& pen, Point at) {
  pen.circle({at.x + 6, at.y}, 4, Ink::ok, Ink::ok, 15);
  pen.circle({at.x + 24, at.y}, 4, Ink::none, Ink::muted, 15);
}

void socket_sample(Pen& pen, Point at) {
  pen.line({at.x, at.y}, {at.x + 26, at.y}, Ink::slate, 15);
  frame_edge(pen, at.x + 34, at.y);
  pen.box({at.x + 26, at.y - 7, 16, 14}, Ink::inside, Ink::slate, 4, 20);
}

bool any_rail(const Content& c, SegmentKind kind) {
  return std::any_of(c.rails.begin(), c.rails.end(), [kind](const RailText& r) { return r.type == kind; });
}

void rail_entries(const Scene& scene, std::vector<Entry>& out) {
  const Content& c = scene.content;
  if (any_rail(c, SegmentKind::isolated))
    out.push_back({[](Pen& p, Point at) { ends(p, at, true, true); }, &text::legend_isolated});
  if (any_rail(c, SegmentKind::bridged))
    out.push_back({[](Pen& p, Point at) {
                     ends(p, at, false, true);
                     frame_edge(p, at.x + 10, at.y);
                   },
                   &text::legend_bridged});
  if (any_rail(c, SegmentKind::nat)) out.push_back({nat_sample, &text::legend_nat});
  if (std::any_of(c.rails.begin(), c.rails.end(), [](const RailText& r) { return r.socket; }))
    out.push_back({socket_sample, &text::legend_socket});
  if (std::any_of(c.rails.begin(), c.rails.end(), [](const RailText& r) { return r.dash != Dash::solid; }))
    out.push_back({[&c](Pen& p, Point at) { pattern_sample(p, at, c.rails); }, &text::legend_pattern});
  if (scene.places.rows.size() > 1)
    out.push_back({[](Pen& p, Point at) {
                     p.line({at.x, at.y - 7}, {at.x + 30, at.y - 7}, Ink::slate, 30);
                     p.line({at.x, at.y + 7}, {at.x + 30, at.y + 7}, Ink::slate, 30);
                     p.line({at.x + 30, at.y - 7}, {at.x + 30, at.y + 7}, Ink::slate, 30);
                   },
                   &text::legend_riser});
}

void machine_entries(const Scene& scene, std::vector<Entry>& out) {
  const Content& c = scene.content;
  const auto any = [&c](auto test) { return std::any_of(c.machines.begin(), c.machines.end(), test); };
  const auto plug = [&](auto test) {
    return any([&](const MachineText& m) {
      return std::any_of(m.plugs.begin(), m.plugs.end(), [&](const Plug& p) { return test(m, p); });
    });
  };
  if (plug([](const MachineText& m, const Plug&) { return m.carrier == kNone; }))
    out.push_back({[](Pen& p, Point at) { pin_sample(p, at, false); }, &text::legend_card});
  if (c.any_hollow) out.push_back({[](Pen& p, Point at) { pin_sample(p, at, true); }, &text::legend_hollow});
  if (any(several_pins)) out.push_back({trunk_sample, &text::legend_trunk});
  if (c.any_inner_plug)
    out.push_back({[](Pen& p, Point at) {
                     draw_square(p, {at.x, at.y - 7}, sample_rail(), SquareKind::joined);
                   },
                   &text::legend_square});
  if (plug([](const MachineText& m, const Plug& p) {
        return m.carrier != kNone && p.rail != kNone && !p.joined;
      }))
    out.push_back({[](Pen& p, Point at) {
                     draw_square(p, {at.x, at.y - 7}, sample_rail(), SquareKind::island);
                   },
                   &text::legend_island});
  if (any([](const MachineText& m) { return !m.hypervisor; }))
    out.push_back({[](Pen& p, Point at) { bar_sample(p, at, Ink::bar); }, &text::legend_bar});
  if (any([](const MachineText& m) { return m.hypervisor; }))
    out.push_back({[](Pen& p, Point at) { bar_sample(p, at, Ink::inner_bar); }, &text::legend_inner_bar});
  if (c.power) out.push_back({power_sample, &text::legend_power});
}

void mark_entries(const Content& c, std::vector<Entry>& out) {
  if (!c.any_mark) return;
  out.push_back({[](Pen& p, Point at) { p.badge({at.x + 9, at.y}, Ink::error); }, &text::legend_error});
  out.push_back({[](Pen& p, Point at) { p.badge({at.x + 9, at.y}, Ink::caution); }, &text::legend_caution});
  out.push_back({[](Pen& p, Point at) { p.badge({at.x + 9, at.y}, Ink::info); }, &text::legend_note});
}

int draw_entries(Pen& pen, const std::vector<Entry>& entries, const Box& room, const DrawOptions& o) {
  const std::size_t group = pen.open({}, Part::legend, room, {});
  const int columns = std::max(1, room.w / kEntryWidth);
  const int rows = (static_cast<int>(entries.size()) + columns - 1) / columns;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const int column = static_cast<int>(i) / std::max(rows, 1);
    const int row = static_cast<int>(i) % std::max(rows, 1);
    const Point at{room.x + column * kEntryWidth + 2, room.y + 14 + row * kEntryHeight};
    entries[i].sample(pen, at);
    pen.text({at.x + kSample, at.y + 4}, o.words(say(*entries[i].words)), {kPlain, Ink::muted},
             kEntryWidth - kSample - 8);
  }
  pen.close(group);
  return rows * kEntryHeight + 4;
}

int draw_title(Pen& pen, const Content& c, const Box& room, const DrawOptions& o) {
  const std::size_t group = pen.open({}, Part::title_block, room, c.title);
  std::vector<std::pair<std::string, Style>> lines;
  const int most = room.w - 28;
  for (const std::string_view line : wrap(c.title, most * kPixel, 15 * kPixel, Weight::semibold)) {
    if (lines.size() == kTitleLines) break;
    lines.emplace_back(line, Style{15, Ink::text, Weight::semibold});
  }
  if (!c.author.empty())
    lines.emplace_back(o.words(say(text::title_author, c.author)), Style{kPlain, Ink::text});
  if (!c.date.empty()) lines.emplace_back(c.date, Style{kPlain, Ink::text});
  lines.emplace_back(
      o.words(c.exercise.empty() ? say(text::title_everything) : say(text::title_exercise, c.exercise)),
      Style{kPlain, Ink::text});
  lines.emplace_back(c.pc_name, Style{kPlain, Ink::text});
  lines.emplace_back(c.pc_facts, Style{kSmall, Ink::muted});
  const int h = 20 + 17 * static_cast<int>(lines.size());
  pen.box({room.x, room.y, room.w, h}, Ink::inside, Ink::frame, 4, 15);
  int y = room.y + 24;
  for (const auto& [words, style] : lines) {
    pen.text({room.x + 14, y}, words, style, most);
    y += 17;
  }
  pen.close(group);
  return h;
}

} // namespace

void draw_legend(Pen& pen, const Scene& scene, Places& places) {
  std::vector<Entry> entries;
  rail_entries(scene, entries);
  machine_entries(scene, entries);
  mark_entries(scene.content, entries);
  const int top = places.outside.bottom() + 16;
  const int title_left = places.outside.right() - kTitleWidth;
  places.legend = {places.outside.x + 6, top, title_left - places.outside.x - 30, 0};
  places.title_block = {title_left, top, kTitleWidth, 0};
  places.legend.h = draw_entries(pen, entries, places.legend, scene.options);
  places.title_block.h = draw_title(pen, scene.content, places.title_block, scene.options);
  places.height = std::max(places.legend.bottom(), places.title_block.bottom()) + kMargin;
}

} // namespace snug::layout
