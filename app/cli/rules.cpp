#include "app/cli/command.h"
#include "core/report/table.h"
#include "core/report/words.h"
#include "core/text/cli_text.h"

namespace snug::cli {

namespace {

std::string_view topic_word(Topic t) {
  constexpr std::array<std::string_view, 9> kWords{"memory", "processors", "disk",  "networks", "addresses",
                                                   "names",  "time",       "reach", "plan"};
  return kWords[static_cast<std::size_t>(t)];
}

Table rule_table(std::span<const Rule> list) {
  Table t;
  t.title = "Rules";
  t.columns = {{"rule", "Rule"},           {"topic", "Topic"},   {"severity", "Severity"},
               {"title", "What it finds"}, {"source", "Source"}, {"fix", "Fix"}};
  for (const Rule& r : list)
    t.rows.push_back(
        {{},
         {std::string(r.id), std::string(topic_word(r.topic)), std::string(word(r.severity)),
          std::string(r.title), std::string(r.source), std::string(r.fix ? "offered" : "by hand")}});
  return t;
}

struct RulesWish {
  std::string rule;
  bool json = false;
};

int write_rules(const Console& console, const RulesWish& wish) {
  std::span<const Rule> list = rules();
  if (!wish.rule.empty()) {
    const Rule* one = find_rule(wish.rule);
    if (!one) return complain(console, Problem{say(text::cli_no_rule, wish.rule), {}, 0, 0, {}}, kUsage);
    list = std::span(one, 1);
  }
  if (wish.json) return deliver(console, {}, json(rule_table(list)));
  std::string out;
  for (const Rule& r : list)
    out += std::string(r.id) + "\n    " + std::string(word(r.severity)) + ", " +
           std::string(topic_word(r.topic)) + ": " + std::string(r.title) +
           "\n    source: " + std::string(r.source) + "\n";
  return deliver(console, {}, out);
}

} // namespace

void add_rules(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<RulesWish>();
  CLI::App* sub = root.add_subcommand("rules", "What the checks look for, and where each rule comes from");
  sub->add_option("RULE", wish->rule, "one rule, as check names it in brackets");
  sub->add_flag("--json", wish->json, "as JSON");
  sub->callback([&plan, wish] { plan.action = [&plan, wish] { return write_rules(plan.console, *wish); }; });
}

} // namespace snug::cli
