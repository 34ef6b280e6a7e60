#include "app/cli/command.h"
#include "core/report/findings_report.h"

namespace snug::cli {

namespace {

struct CheckWish {
  std::string file;
  std::string exercise;
  std::string format = "text";
  std::string output;
  bool json = false;
  bool all = false;
};

int check_lab(const Console& console, const CheckWish& wish) {
  const auto lab = load(console, wish.file);
  if (!lab) return kUnreadable;
  const auto exercise = find_exercise(*lab, wish.exercise);
  if (!exercise) return complain(console, exercise.error(), kUsage);
  const Analysis a = analyse(*lab);
  const bool markdown = !wish.json && wish.format == "markdown";
  const ReportChoice choice{*exercise, wish.all || markdown};
  const std::string text = wish.json || wish.format == "json" ? findings_json(a, choice)
                           : markdown                         ? findings_markdown(a)
                                                              : findings_text(a, choice);
  if (const int code = deliver(console, wish.output, text); code != kFine) return code;
  const bool bad = choice.every_exercise ? a.has_error() : a.has_error(*exercise);
  return bad ? kFindings : kFine;
}

} // namespace

void add_check(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<CheckWish>();
  CLI::App* sub =
      root.add_subcommand("check", "Budgets and findings of a lab; exit code 1 when there is an error");
  sub->add_option("FILE", wish->file, "the lab")->required();
  CLI::Option* one =
      sub->add_option("--exercise", wish->exercise, "name or id of an exercise; without it everything is on");
  sub->add_flag("--all", wish->all, "every exercise")->excludes(one);
  CLI::Option* json = sub->add_flag("--json", wish->json, "as JSON");
  sub->add_option("--format", wish->format, "text, markdown or json")
      ->excludes(json)
      ->check(CLI::IsMember({"text", "markdown", "json"}));
  sub->add_option("-o,--output", wish->output, "write to this file");
  sub->callback([&plan, wish] { plan.action = [&plan, wish] { return check_lab(plan.console, *wish); }; });
}

} // namespace snug::cli
