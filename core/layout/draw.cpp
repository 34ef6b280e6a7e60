#include "core/layout/draw.h"

#include "core/layout/draw_parts.h"
#include "core/text/layout_text.h"

namespace snug {

Drawing draw(const Analysis& analysis, const DrawOptions& options) {
  using namespace layout;
  const Content content = content_of(analysis, options);
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
      english(say(text::layout_describe, Count{static_cast<std::int64_t>(content.machines.size())},
                  Count{static_cast<std::int64_t>(content.rails.size())}, content.pc_name));
  return drawing;
}

} // namespace snug
