#include "core/layout/draw.h"

#include "core/layout/draw_parts.h"
#include "core/text/layout_text.h"

namespace snug {

Drawing layout::draw_content(const Content& content, const DrawOptions& options) {
  Places places = place(content, options);
  Drawing drawing;
  Pen pen(drawing);
  const Scene scene{content, places, options};
  pen.show({}, Part::sheet);
  pen.box({}, Ink::sheet, Ink::none, 0, 0); // sized below
  draw_ruler(pen, scene);
  draw_outside(pen, scene);
  draw_rails(pen, scene);
  draw_wires(pen, scene);
  draw_machines(pen, scene);
  if (options.show_legend) draw_legend(pen, scene, places);
  drawing.width = places.width;
  drawing.height = places.height;
  std::get<BoxShape>(drawing.shapes.front()).box = {0, 0, drawing.width, drawing.height};
  drawing.title = content.title;
  drawing.description =
      options.words(say(text::layout_describe, Count{static_cast<std::int64_t>(content.machines.size())},
                        Count{static_cast<std::int64_t>(content.rails.size())}, content.pc_name));
  return drawing;
}

namespace {

constexpr int kRulerPad = 22; // letters of the first and last mark
constexpr int kRulerSheet = 66;

} // namespace

Drawing draw(const Analysis& analysis, const DrawOptions& options) {
  return layout::draw_content(layout::content_of(analysis, options), options);
}

Drawing draw_ruler(const Analysis& analysis, ExerciseId exercise, int width, std::optional<ExerciseId> beside,
                   const Tongue* tongue) {
  DrawOptions options;
  options.exercise = exercise;
  options.tongue = tongue;
  const layout::Content content = layout::ruler_content_of(analysis, options);
  layout::Places places;
  places.ruler = {kRulerPad, 0, std::max(width, 200) - 2 * kRulerPad, kRulerSheet};
  Drawing drawing;
  layout::Pen pen(drawing);
  const layout::Scene scene{content, places, options};
  layout::draw_ruler(pen, scene);
  if (beside && *beside != exercise) {
    DrawOptions other = options;
    other.exercise = *beside;
    layout::draw_comparison(pen, scene, layout::ruler_content_of(analysis, other),
                            *beside ? name_of(analysis.lab(), *beside)
                                    : options.words(say(text::title_everything)));
  }
  drawing.width = std::max(width, 200);
  drawing.height = kRulerSheet;
  drawing.title = content.ruler.name;
  drawing.description = content.ruler.state;
  if (!content.ruler.expected_state.empty()) drawing.description += "; " + content.ruler.expected_state;
  return drawing;
}

std::int64_t mib_per_pixel(const Analysis& analysis, ExerciseId exercise, int width) {
  DrawOptions options;
  options.exercise = exercise;
  const layout::RulerText ruler = layout::ruler_content_of(analysis, options).ruler;
  const std::int64_t end = std::max(ruler.size, ruler.reserved + ruler.taken);
  return std::max<std::int64_t>(1, end / (std::max(width, 200) - 2 * kRulerPad));
}

} // namespace snug
