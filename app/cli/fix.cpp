#include "app/cli/command.h"
#include "core/base/clean.h"
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

bool changes_place(const Edit& edit, const std::string& place) {
  const std::vector<AnyId> ids = touched(edit);
  return std::any_of(ids.begin(), ids.end(), [&](AnyId id) { return to_text(id) == place; });
}

// Of two repairs the one that changes the place that was named.
std::optional<Fix> chosen_fix(const Analysis& a, const Finding& f, const FixWish& wish) {
  std::vector<Fix> fixes = a.fixes(f);
  if (fixes.empty()) return std::nullopt;
  const bool other = fixes.size() > 1 && !changes_place(fixes[0].edit, wish.place) &&
                     changes_place(fixes[1].edit, wish.place);
  return std::move(fixes[other ? 1 : 0]);
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
      if (!fix && matches(wish, f)) fix = chosen_fix(a, f, wish);
    if (!fix) break;
    Lab next = lab;
    if (!apply(next, fix->edit)) break;
    lab = std::move(next);
    ++done;
  }
  return done;
}

// What stays: by which rule, and what a person can do about it.
int tell_rest(const Console& console, const Lab& lab, const FixWish& wish) {
  int left = 0;
  const Analysis a = analyse(lab);
  for (const Finding& f : a.findings()) {
    if (!matches(wish, f)) continue;
    const std::string what = clean(english(f.message)), advice = clean(english(f.reason));
    complain(console, Problem{say(text::cli_by_hand, what, advice), wish.file, 0, 0, {}}, kFindings);
    ++left;
  }
  return left;
}

int nothing_done(const Console& console, const Lab& lab, const FixWish& wish) {
  if (tell_rest(console, lab, wish) > 0) return kFindings;
  const Template& none = wish.place.empty() ? text::cli_nothing_to_fix : text::cli_nothing_to_fix_there;
  return complain(console, Problem{say(none, wish.rule, wish.file, wish.place), wish.file, 0, 0, {}},
                  kFindings);
}

int fix_lab(const Console& console, const FixWish& wish) {
  if (!find_rule(wish.rule))
    return complain(console, Problem{say(text::cli_no_rule, wish.rule), {}, 0, 0, {}}, kUsage);
  const auto target = Rewrite::begin(wish.file, wish.output);
  if (!target) return complain(console, target.error(), kCannotWrite);
  auto loaded = load_document(console, wish.file);
  if (!loaded) return kUnreadable;
  const Lab before = loaded->lab;
  if (repair(loaded->lab, wish) == 0) return nothing_done(console, before, wish);
  const int code = target->finish(console, *loaded, changes_text(changes(before, loaded->lab)));
  if (code == kFine) tell_rest(console, loaded->lab, wish);
  return code;
}

} // namespace

void add_fix(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<FixWish>();
  CLI::App* sub =
      root.add_subcommand("fix", "Make the repair that check offers; the previous file is kept as FILE~");
  sub->add_option("FILE", wish->file, "the lab")->required();
  sub->add_option("RULE", wish->rule, "the rule, as check names it in brackets")->required();
  sub->add_option("--place", wish->place,
                  "only findings about the element with this id; of two repairs the one that changes it");
  sub->add_option("-o,--output", wish->output, "write the lab to this file instead");
  sub->callback([&plan, wish] { plan.action = [&plan, wish] { return fix_lab(plan.console, *wish); }; });
}

} // namespace snug::cli
