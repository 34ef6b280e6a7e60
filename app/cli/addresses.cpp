#include "app/cli/command.h"
#include "core/addressing/plan.h"
#include "core/report/changes.h"
#include "core/text/cli_text.h"

#include <algorithm>

namespace snug::cli {

namespace {

struct AddressWish {
  std::string file;
  std::string output;
  PlanOptions options;
  bool no_prefixes = false;
  bool json = false;
};

// A planned address brings no way out with it, as DHCP would.
void tell_ways(const Console& console, const Lab& lab) {
  const Analysis a = analyse(lab);
  std::vector<std::string> names;
  for (const Finding& f : a.findings())
    if (!f.accepted && f.rule->id == "default-missing") names.push_back(name_of(lab, f.places.front()));
  if (names.empty()) return;
  console.err << "snuglab-cli: "
              << english(
                     say(text::cli_no_default, Count{static_cast<std::int64_t>(names.size())}, names.front()))
              << "\n";
}

int suggest(const Console& console, const AddressWish& wish, bool apply_it) {
  std::optional<Rewrite> target;
  if (apply_it) {
    auto taken = Rewrite::begin(wish.file, wish.output);
    if (!taken) return complain(console, taken.error(), kCannotWrite);
    target = std::move(*taken);
  }
  auto loaded = load_document(console, wish.file);
  if (!loaded) return kUnreadable;
  PlanOptions options = wish.options;
  options.prefixes = !wish.no_prefixes;
  const auto edit = suggest_addresses(loaded->lab, options);
  if (!edit) return complain(console, edit.error(), kFindings);
  const Lab before = loaded->lab;
  if (auto done = apply(loaded->lab, *edit); !done) return complain(console, done.error(), kInternal);
  const auto list = changes(before, loaded->lab);
  const std::string text = wish.json ? changes_json(list) : changes_text(list);
  tell_ways(console, loaded->lab);
  if (!target) return deliver(console, wish.output, text);
  if (edit->empty() && target->is_same_file()) return deliver(console, {}, text);
  return target->finish(console, *loaded, text);
}

CLI::App* add_one(CLI::App& parent, const char* name, const char* what,
                  const std::shared_ptr<AddressWish>& wish) {
  CLI::App* sub = parent.add_subcommand(name, what);
  sub->add_option("FILE", wish->file, "the lab")->required();
  sub->add_flag("--by-need", wish->options.by_need,
                "prefixes just large enough for what stands there (VLSM)");
  sub->add_flag("--ipv6", wish->options.ipv6, "IPv6 as well (RFC 4193)");
  sub->add_flag("--no-prefixes", wish->no_prefixes, "leave segments without a prefix alone");
  sub->add_flag("--json", wish->json, "as JSON");
  return sub;
}

} // namespace

void add_addresses(CLI::App& root, Plan& plan) {
  CLI::App* parent = root.add_subcommand("addresses", "Plan the addresses that nobody has typed");
  parent->require_subcommand(1);
  auto see = std::make_shared<AddressWish>();
  CLI::App* suggest_sub = add_one(*parent, "suggest", "What would be set; writes nothing to the lab", see);
  suggest_sub->add_option("-o,--output", see->output, "write the list to this file");
  suggest_sub->callback(
      [&plan, see] { plan.action = [&plan, see] { return suggest(plan.console, *see, false); }; });
  auto set = std::make_shared<AddressWish>();
  CLI::App* apply_sub =
      add_one(*parent, "apply", "Set it in the lab; the previous file is kept as FILE~", set);
  apply_sub->add_option("-o,--output", set->output, "write the lab to this file instead");
  apply_sub->callback(
      [&plan, set] { plan.action = [&plan, set] { return suggest(plan.console, *set, true); }; });
}

} // namespace snug::cli
