#include "core/report/changes.h"

#include "app/cli/command.h"

namespace snug::cli {

namespace {

struct ChangesWish {
  std::string before;
  std::string after;
  std::string output;
  bool json = false;
};

int write_changes(const Console& console, const ChangesWish& wish) {
  const auto before = load(console, wish.before);
  if (!before) return kUnreadable;
  const auto after = load(console, wish.after);
  if (!after) return kUnreadable;
  const auto list = changes(*before, *after);
  return deliver(console, wish.output, wish.json ? changes_json(list) : changes_text(list));
}

} // namespace

void add_changes(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<ChangesWish>();
  CLI::App* sub = root.add_subcommand("changes", "What changed from one lab to another");
  sub->add_option("BEFORE", wish->before, "the lab as it was")->required();
  sub->add_option("AFTER", wish->after, "the lab as it is")->required();
  sub->add_flag("--json", wish->json, "as JSON");
  sub->add_option("-o,--output", wish->output, "write to this file");
  sub->callback(
      [&plan, wish] { plan.action = [&plan, wish] { return write_changes(plan.console, *wish); }; });
}

} // namespace snug::cli
