#include "app/cli/command.h"
#include "core/report/reach_report.h"
#include "core/text/cli_text.h"

namespace snug::cli {

namespace {

struct WhatIfWish {
  std::string file, exercise, output;
  std::vector<std::string> off;
  bool json = false, markdown = false;
};

int ask(const Console& console, const WhatIfWish& wish) {
  const auto lab = load(console, wish.file);
  if (!lab) return kUnreadable;
  const auto exercise = find_exercise(*lab, wish.exercise);
  if (!exercise) return complain(console, exercise.error(), kUsage);
  std::vector<AnyId> off;
  for (const std::string& text : wish.off) {
    const auto id = find_element(*lab, text, {Kind::machine, Kind::segment, Kind::card}, text::cli_no_off);
    if (!id) return complain(console, id.error(), kUsage);
    off.push_back(*id);
  }
  const Analysis a = analyse(*lab);
  const WhatIf w = what_if(a.index(), a.addresses(), *exercise, off);
  const Table t = what_if_table(a, *exercise, off, w);
  std::string text = wish.json ? json(t) : wish.markdown ? markdown(t) : plain(t);
  if (!wish.json && t.rows.empty()) text = t.title + ": " + english(say(text::cli_nothing_fails)) + "\n";
  if (const int code = deliver(console, wish.output, text); code != kFine) return code;
  return w.promises.empty() ? kFine : kFindings;
}

} // namespace

void add_what_if(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<WhatIfWish>();
  CLI::App* sub = root.add_subcommand(
      "what-if",
      "What fails when machines, cards or segments are off; exit code 1 when a promise would be broken");
  sub->add_option("FILE", wish->file, "the lab")->required();
  sub->add_option("--off", wish->off, "name or id of a machine, card or segment; may be given again")
      ->required();
  sub->add_option("--exercise", wish->exercise, "name or id of an exercise; without it everything is on");
  CLI::Option* json = sub->add_flag("--json", wish->json, "as JSON");
  sub->add_flag("--markdown", wish->markdown, "as Markdown")->excludes(json);
  sub->add_option("-o,--output", wish->output, "write to this file");
  sub->callback([&plan, wish] { plan.action = [&plan, wish] { return ask(plan.console, *wish); }; });
}

} // namespace snug::cli
