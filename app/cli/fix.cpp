#include "app/cli/command.h"
#include "core/report/changes.h"
#include "core/text/cli_text.h"

#include <algorithm>

namespace snug::cli {

namespace {

struct FixWish {
  std::string file;
  std::string rule;
  std::string place;
  std::string output;
};

bool matches(const FixWish& wish, const Finding& f) {
  if (f.accepted || f.rule->id != wish.rule) return false;
  return wish.place.empty() ||
         std::any_of(f.places.begin(), f.places.end(), [&](AnyId id) { return to_text(id) == wish.place; });
}

// One repair after the other: each looks at the lab as the one before left it. At most as many as there were
// findings.
int repair(Lab& lab, const FixWish& wish) {
  int done = 0;
  const std::size_t most = analyse(lab).findings().size();
  for (std::size_t round = 0; round < most; ++round) {
    const Analysis a = analyse(lab);
    std::optional<Fix> fix;
    for (const Finding& f : a.findings())
      if (!fix && matches(wish, f)) fix = a.fix(f);
    if (!fix) break;
    Lab next = lab;
    if (!apply(next, fix->edit)) break;
    lab = std::move(next);
    ++done;
  }
  return done;
}

int fix_lab(const Console& console, const FixWish& wish) {
  if (!find_rule(wish.rule))
    return complain(console, Problem{say(text::cli_no_rule, wish.rule), {}, 0, 0, {}}, kUsage);
  const auto target = Rewrite::begin(wish.file, wish.output);
  if (!target) return complain(console, target.error(), kCannotWrite);
  auto loaded = load_document(console, wish.file);
  if (!loaded) return kUnreadable;
  const Lab before = loaded->lab;
  if (repair(loaded->lab, wish) == 0)
    return complain(console, Problem{say(text::cli_nothing_to_fix, wish.rule), wish.file, 0, 0, {}},
                    kFindings);
  return target->finish(console, *loaded, changes_text(changes(before, loaded->lab)));
}

} // namespace

void add_fix(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<FixWish>();
  CLI::App* sub =
      root.add_subcommand("fix", "Make the repair that check offers; the previous file is kept as FILE~");
  sub->add_option("FILE", wish->file, "the lab")->required();
  sub->add_option("RULE", wish->rule, "the rule, as check names it in brackets")->required();
  sub->add_option("--place", wish->place, "only findings about the element with this id");
  sub->add_option("-o,--output", wish->output, "write the lab to this file instead");
  sub->callback([&plan, wish] { plan.action = [&plan, wish] { return fix_lab(plan.console, *wish); }; });
}

} // namespace snug::cli
