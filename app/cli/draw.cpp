#include "core/layout/draw.h"
#include "app/cli/command.h"
#include "core/net/host_name.h"
#include "core/report/svg.h"
#include "core/text/cli_text.h"

namespace snug::cli {

namespace {

struct DrawWish {
  std::string file;
  std::string exercise;
  std::string output;
  std::string format;
  std::string theme = "light";
  int scale = 200;
};

bool ends_with(std::string_view s, std::string_view end) {
  return s.size() >= end.size() && same_name(s.substr(s.size() - end.size()), end);
}

Result<PictureFormat> format_of(const DrawWish& wish) {
  const std::string& name = wish.format.empty() ? wish.output : wish.format;
  if (ends_with(name, "svg") || (wish.format.empty() && (wish.output.empty() || wish.output == "-")))
    return PictureFormat::svg;
  if (ends_with(name, "png")) return PictureFormat::png;
  if (ends_with(name, "pdf")) return PictureFormat::pdf;
  return fail(text::cli_picture, wish.output);
}

Theme theme_of(const std::string& word) {
  return word == "dark" ? Theme::dark : word == "print" ? Theme::print : Theme::light;
}

Result<std::string> picture(const Console& console, const Drawing& drawing, const PictureWish& wish) {
  if (wish.format == PictureFormat::svg) return svg(drawing, {wish.theme});
  if (!console.paint) return fail(text::cli_no_paint);
  return console.paint(drawing, wish);
}

int draw_lab(const Console& console, const DrawWish& wish) {
  const auto format = format_of(wish);
  if (!format) return complain(console, format.error(), kUsage);
  const auto lab = load(console, wish.file);
  if (!lab) return kUnreadable;
  const auto exercise = find_exercise(*lab, wish.exercise);
  if (!exercise) return complain(console, exercise.error(), kUsage);
  const Analysis a = analyse(*lab);
  DrawOptions options;
  options.exercise = *exercise;
  const Drawing drawing = draw(a, options);
  const auto bytes = picture(console, drawing, {*format, theme_of(wish.theme), wish.scale, lab->facts.title});
  if (!bytes) return complain(console, bytes.error(), kCannotWrite);
  return deliver(console, wish.output, *bytes);
}

} // namespace

void add_draw(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<DrawWish>();
  CLI::App* sub = root.add_subcommand("draw", "The diagram of a lab as SVG, PNG or PDF");
  sub->add_option("FILE", wish->file, "the lab")->required();
  sub->add_option("-o,--output", wish->output, "write to this file; its ending says the format");
  sub->add_option("--format", wish->format, "svg, png or pdf")->check(CLI::IsMember({"svg", "png", "pdf"}));
  sub->add_option("--exercise", wish->exercise, "name or id of an exercise; without it everything is on");
  sub->add_option("--theme", wish->theme, "light, dark or print")
      ->check(CLI::IsMember({"light", "dark", "print"}));
  sub->add_option("--scale", wish->scale, "percent, of PNG")->check(CLI::Range(10, 800));
  sub->callback([&plan, wish] { plan.action = [&plan, wish] { return draw_lab(plan.console, *wish); }; });
}

} // namespace snug::cli
