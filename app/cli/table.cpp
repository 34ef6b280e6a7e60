#include "app/cli/command.h"
#include "core/net/host_name.h"
#include "core/report/tables.h"

namespace snug::cli {

namespace {

struct TableWish {
  std::string file;
  std::string of = "addresses";
  std::string format; // empty: as the output's ending says
  std::string output;
  bool json = false;
};

// As asked, else as the ending of the output says, else Markdown.
std::string format_of(const TableWish& wish) {
  if (wish.json) return "json";
  if (!wish.format.empty()) return wish.format;
  const std::string ending = wish.output.substr(std::min(wish.output.size(), wish.output.rfind('.')));
  for (const auto& [end, format] :
       {std::pair(".csv", "csv"), {".html", "html"}, {".htm", "html"}, {".json", "json"}})
    if (same_name(ending, end)) return format;
  return "markdown";
}

int write_table(const Console& console, const TableWish& wish) {
  const auto lab = load(console, wish.file);
  if (!lab) return kUnreadable;
  const Analysis a = analyse(*lab);
  const Table t = wish.of == "segments"    ? segment_table(a)
                  : wish.of == "machines"  ? machine_table(a)
                  : wish.of == "exercises" ? exercise_table(a)
                                           : address_table(a);
  const std::string format = format_of(wish);
  const std::string text = format == "json"   ? json(t)
                           : format == "csv"  ? csv(t)
                           : format == "html" ? html(t, lab->facts.language)
                                              : markdown(t);
  return deliver(console, wish.output, text);
}

} // namespace

void add_table(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<TableWish>();
  CLI::App* sub = root.add_subcommand("table", "Address table of a lab, or another of its tables");
  sub->add_option("FILE", wish->file, "the lab")->required();
  sub->add_option("--of", wish->of, "addresses, segments, machines or exercises")
      ->check(CLI::IsMember({"addresses", "segments", "machines", "exercises"}));
  sub->add_option("--format", wish->format,
                  "csv, markdown, html or json; without it the output's ending says, else markdown")
      ->check(CLI::IsMember({"csv", "markdown", "html", "json"}));
  sub->add_flag("--json", wish->json, "as JSON");
  sub->add_option("-o,--output", wish->output, "write to this file");
  sub->callback([&plan, wish] { plan.action = [&plan, wish] { return write_table(plan.console, *wish); }; });
}

} // namespace snug::cli
