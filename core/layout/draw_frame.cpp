#include "core/layout/draw_parts.h"
#include "core/text/layout_text.h"

#include <algorithm>

namespace snug::layout {

namespace {

void draw_lan(Pen& pen, const LanText& lan, const Box& box) {
  const std::size_t group = pen.open(lan.id, Part::lan, box, lan.title, lan.description);
  pen.box(box, Ink::inside, Ink::edge, 7, 12);
  const int most = box.w - 16;
  const int x = box.x + box.w / 2;
  pen.text({x, box.y + 20}, lan.name, {kName, Ink::text, Weight::semibold, Anchor::middle}, most);
  int y = box.y + 35;
  for (const std::string& line : lan.lines) {
    pen.text({x, y}, line, {kSmall, Ink::muted, Weight::regular, Anchor::middle}, most);
    y += 14;
  }
  if (lan.mark.any) {
    pen.part(Part::badge);
    pen.badge({box.x + 2, box.y + 1}, ink_of(lan.mark.severity));
  }
  pen.close(group);
}

void draw_pc(Pen& pen, const Scene& scene) {
  const Content& c = scene.content;
  const Box& frame = scene.places.frame;
  const std::size_t group = pen.open(AnyId{Kind::pc, 0}, Part::frame, frame, c.pc_name, c.pc_facts);
  pen.box(frame, Ink::inside, Ink::frame, 16, 25);
  int x = frame.x + 26;
  const int y = frame.y + 27;
  x += pen.text({x, y}, c.pc_name, {14, Ink::text, Weight::semibold}, 260) + 12;
  if (c.pc_mark.any) {
    pen.part(Part::badge);
    pen.badge({x + 2, y - 5}, ink_of(c.pc_mark.severity));
    pen.part(Part::frame);
    x += 18;
  }
  int right = frame.right() - 20;
  if (!scene.options.show_ruler && scene.options.show_state)
    right -=
        pen.text({right, y}, c.ruler.state,
                 {kPlain, ink_of(c.ruler.verdict, Ink::muted), Weight::semibold, Anchor::end}, frame.w / 2) +
        16;
  pen.text({x, y}, c.pc_facts, {kPlain, Ink::muted}, right - x);
  if (c.machines.empty()) {
    const int middle = scene.places.rows.front().top + 34;
    pen.text({frame.x + frame.w / 2, middle}, scene.options.words(say(text::layout_empty)),
             {kTitle, Ink::muted, Weight::regular, Anchor::middle}, frame.w - 60);
    if (scene.options.invite)
      pen.text({frame.x + frame.w / 2, middle + 18}, scene.options.words(say(text::layout_invite)),
               {kPlain, Ink::muted, Weight::regular, Anchor::middle}, frame.w - 60);
  }
  pen.close(group);
}

// Strokes of 45 degrees across a box.
void hatch(Pen& pen, const Box& box) {
  for (int d = 8; d < box.w + box.h; d += 8) {
    const int up = std::min(d, box.w);
    const int down = std::min(d, box.h);
    pen.line({box.x + d - down, box.y + down}, {box.x + up, box.y + d - up}, Ink::hatch, 15);
  }
}

constexpr int kOffStrip = 7;
constexpr int kLegendGap = 14; // of the ruler, from its name

class Ruler {
 public:
  Ruler(Pen& pen, const Scene& scene)
      : pen_(pen), content_(scene.content),
        options_(scene.options), bar_{scene.places.ruler.x, scene.places.ruler.y + 18, scene.places.ruler.w,
                                      24},
        end_(std::max<std::int64_t>(
            {content_.ruler.size, content_.ruler.reserved + content_.ruler.taken, 1})) {}
  void draw() {
    const RulerText& r = content_.ruler;
    const int y = bar_.y - 7;
    const int w =
        pen_.text({bar_.right(), y}, r.state,
                  {kName, ink_of(r.verdict, Ink::muted), Weight::semibold, Anchor::end}, bar_.w * 2 / 3);
    pen_.text({bar_.x, y}, r.name, {kName, Ink::text, Weight::semibold}, bar_.w - w - 16);
    legend(bar_.right() - w - 16);
    pen_.box(bar_, Ink::inside, Ink::none, 0, 0);
    const Box own = span(0, r.reserved);
    pen_.box(own, Ink::track, Ink::none, 0, 0);
    hatch(pen_, own);
    own_label(own);
    std::int64_t at = r.reserved;
    for (const std::uint32_t m : content_.top) {
      block(content_.machines[m], at);
      at += content_.machines[m].takes;
    }
    pen_.show({}, Part::ruler);
    pen_.box(bar_, Ink::none, Ink::frame, 3, 12);
    if (end_ > r.size) pen_.line({x(r.size), bar_.y - 4}, {x(r.size), bar_.bottom() + 5}, Ink::text, 20);
    expected();
    ticks();
  }
  // What another exercise takes: a dashed outline over the bar, blocks that are off then hatched, a sentence.
  void compare(const Content& other, const std::string& name) {
    const RulerText& r = content_.ruler;
    std::int64_t at = r.reserved;
    for (const std::uint32_t m : content_.top) {
      const MachineText& mine = content_.machines[m];
      const auto same = [&](const MachineText& o) { return o.id == mine.id && o.takes > 0; };
      if (mine.takes > 0 && std::none_of(other.machines.begin(), other.machines.end(), same)) {
        pen_.show(mine.id, Part::ruler);
        const Box block = span(at, at + mine.takes);
        hatch(pen_, {block.x, block.bottom() - kOffStrip, block.w, kOffStrip}); // below its name
      }
      at += mine.takes;
    }
    pen_.show({}, Part::ruler);
    const Box ghost = span(0, std::min(end_, other.ruler.reserved + other.ruler.taken));
    pen_.box({ghost.x, bar_.y - 3, ghost.w, bar_.h + 6}, Ink::none, Ink::info, 4, 20, Dash::dash);
    const std::int64_t more = other.ruler.taken - r.taken;
    const Template& words = more < 0   ? text::compare_less
                            : more > 0 ? text::compare_more
                                       : text::compare_same;
    const int left = name_right() + legend_width() + 20;
    const int right = bar_.right() - width_of(r.state, kName, Weight::semibold) - 20;
    if (right - left < 40) return;
    pen_.text({left, bar_.y - 7},
              options_.words(say(words, name, Mib{other.ruler.taken}, Mib{more < 0 ? -more : more})),
              {kPlain, Ink::info, Weight::semibold}, right - left);
  }

 private:
  int x(std::int64_t mib) const { return bar_.x + static_cast<int>(mib * bar_.w / end_); }
  Box span(std::int64_t from, std::int64_t to) const {
    return {x(from), bar_.y, std::max(x(to) - x(from), 0), bar_.h};
  }
  int name_right() const { return bar_.x + width_of(content_.ruler.name, kName, Weight::semibold); }
  int legend_width() const {
    const std::string& words = content_.ruler.expected_name;
    return words.empty() ? 0 : kLegendGap + 14 + width_of(words, kPlain);
  }
  // A tip that points at the bar, as over the expected end of it.
  void tip(Point at) { pen_.polygon({{at.x - 5, at.y - 7}, {at.x + 5, at.y - 7}, at}, Ink::text); }
  // What the tip means, beside the name where there is room for all of it.
  void legend(int right) {
    const int x = name_right() + kLegendGap;
    if (legend_width() == 0 || name_right() + legend_width() > right) return;
    tip({x + 5, bar_.y - 8});
    pen_.text({x + 14, bar_.y - 7}, content_.ruler.expected_name, {kPlain, Ink::muted}, right - x - 14);
  }
  void expected() {
    const RulerText& r = content_.ruler;
    if (r.expected_name.empty()) return;
    const int at = x(r.reserved + r.expected);
    tip({at, bar_.y + 3});
    pen_.line({at, bar_.bottom() - 4}, {at, bar_.bottom()}, Ink::text, 15); // no label is crossed
  }
  void own_label(const Box& own) {
    const std::string& name = content_.ruler.reserved_name;
    const int w = width_of(name, kPlain);
    if (w + 20 > own.w) return;
    pen_.box({own.x + 5, own.y + 4, w + 8, own.h - 8}, Ink::inside, Ink::none, 3, 0);
    pen_.text({own.x + 9, own.y + 16}, name, {kPlain}, w + 1);
  }
  void block(const MachineText& m, std::int64_t at) {
    if (m.takes == 0) return;
    const std::int64_t size = content_.ruler.size;
    pen_.show(m.id, Part::ruler);
    const Box all = span(at, at + m.takes);
    pen_.box(all, m.hypervisor ? Ink::room_block : Ink::block, Ink::inside, 0, 20);
    if (at + m.takes > size) {
      const Box past = span(std::max(at, size), at + m.takes);
      pen_.box(past, Ink::error, Ink::inside, 0, 20);
      label(m, span(at, std::max(at, size)), all);
      return;
    }
    label(m, all, all);
    if (!m.hypervisor || m.bar.part <= 0) return;
    const int w = std::min(x(at + m.bar.part) - all.x, all.w - 2);
    if (w > 0) pen_.box({all.x + 1, all.bottom() - 5, w, 4}, Ink::inner_bar, Ink::none, 0, 0);
  }
  void label(const MachineText& m, const Box& room, const Box& all) {
    const bool past = room.w == 0;
    const int most = (past ? all.w : room.w) - 12;
    const std::string whole = m.name + "  " + show_mib(m.takes);
    const bool fits = width_of(whole, kPlain) <= most;
    if (!fits && width_of(m.name, kPlain) > most) return;
    pen_.text({all.x + 7, all.y + 15}, fits ? whole : m.name, {kPlain, past ? Ink::on_fill : Ink::text},
              most);
  }
  void ticks() {
    std::int64_t step = 1024;
    while (end_ / step > 12) step *= 2;
    for (std::int64_t at = 0; at <= end_; at += step) {
      pen_.line({x(at), bar_.bottom()}, {x(at), bar_.bottom() + 5}, Ink::muted, 10);
      const bool last = at + step > end_;
      pen_.text({x(at), bar_.bottom() + 16},
                last ? std::to_string(at / 1024) + " GiB" : std::to_string(at / 1024),
                {kSmall, Ink::muted, Weight::regular, Anchor::middle}, 60);
    }
  }
  Pen& pen_;
  const Content& content_;
  const DrawOptions& options_;
  Box bar_;
  std::int64_t end_;
};

} // namespace

void draw_outside(Pen& pen, const Scene& scene) {
  const Places& p = scene.places;
  pen.show({}, Part::outside);
  pen.box(p.outside, Ink::outside, Ink::edge, 9, 10);
  if (!p.lans.empty())
    pen.text({p.outside.x + 12, p.outside.y + 22}, scene.options.words(say(text::layout_outside)),
             {kPlain, Ink::muted, Weight::semibold}, p.frame.x - p.outside.x - 16);
  draw_pc(pen, scene);
  for (std::size_t l = 0; l < p.lans.size(); ++l) draw_lan(pen, scene.content.lans[l], p.lans[l]);
}

void draw_comparison(Pen& pen, const Scene& scene, const Content& other, const std::string& name) {
  Ruler(pen, scene).compare(other, name);
}

void draw_ruler(Pen& pen, const Scene& scene) {
  if (!scene.options.show_ruler) return;
  const std::size_t group =
      pen.open({}, Part::ruler, scene.places.ruler, scene.content.ruler.name, scene.content.ruler.state);
  Ruler(pen, scene).draw();
  pen.close(group);
}

} // namespace snug::layout
