#include "app/cli/command.h"
#include "core/reach/askable.h"
#include "core/report/reach_report.h"
#include "core/text/cli_text.h"

namespace snug::cli {

namespace {

struct ReachWish {
  std::string file, from, to;
  std::string exercise;
  std::string service = "ping";
  std::string output;
  bool all = false, full_size = false, json = false, csv = false, markdown = false;
};

// A machine, a LAN's router or a segment's translator, by name or id; "pc" and "outside".
Result<AnyId> find_node(const Lab& lab, const std::string& text) {
  if (text == "pc") return AnyId{Kind::pc, 0};
  if (text == "outside") return AnyId{Kind::outside, 0};
  return find_element(lab, text, {Kind::machine, Kind::lan, Kind::segment}, text::cli_no_node);
}

// Also an address, and "machine/card" for one of several addresses.
Result<AskedEnd> find_end(const Analysis& a, ExerciseId exercise, const std::string& text) {
  const ReachNetwork& network = a.reach(exercise).network();
  auto node = find_node(a.lab(), text);
  if (node) return AskedEnd{*node, {}};
  if (const auto address = parse_address(text)) return end_at(network, *address);
  const std::size_t slash = text.rfind('/');
  if (slash == std::string::npos) return tl::unexpected(node.error());
  const auto machine = find_element(a.lab(), text.substr(0, slash), {Kind::machine}, text::cli_no_node);
  if (!machine) return tl::unexpected(machine.error());
  const auto at = address_on_card(a.index(), network, MachineId{machine->number}, text.substr(slash + 1));
  if (!at) return tl::unexpected(at.error());
  return AskedEnd{*machine, *at};
}

int ask(const Console& console, const ReachWish& wish) {
  if (!wish.all && (wish.from.empty() || wish.to.empty()))
    return complain(console, Problem{say(text::cli_reach_ends), {}, 0, 0, {}}, kUsage);
  const auto lab = load(console, wish.file);
  if (!lab) return kUnreadable;
  const auto exercise = find_exercise(*lab, wish.exercise);
  if (!exercise) return complain(console, exercise.error(), kUsage);
  const auto service = parse_service(wish.service);
  if (!service) return complain(console, service.error(), kUsage);
  ReachQuestion q;
  q.transport = service->transport;
  q.port = service->port;
  q.full_size = wish.full_size;
  const Analysis a = analyse(*lab);
  std::string text;
  if (wish.all) {
    const Table t = reach_table(a, *exercise, q);
    text = wish.json ? json(t) : wish.csv ? csv(t) : wish.markdown ? markdown(t) : plain(t);
  } else {
    const auto from = find_end(a, *exercise, wish.from), to = find_end(a, *exercise, wish.to);
    if (!from) return complain(console, from.error(), kUsage);
    if (!to) return complain(console, to.error(), kUsage);
    if (from->address) return complain(console, Problem{say(text::cli_from_card), {}, 0, 0, {}}, kUsage);
    q.from = from->node;
    q.to = to->node;
    q.target = to->address;
    const ReachAnswer answer = a.reach(*exercise).ask(q);
    text = wish.json ? reach_json(a, *exercise, q, answer) : reach_text(a, *exercise, q, answer);
  }
  if (const int code = deliver(console, wish.output, text); code != kFine) return code;
  return breaks_promise(a, *exercise) ? kFindings : kFine;
}

} // namespace

void add_reach(CLI::App& root, Plan& plan) {
  auto wish = std::make_shared<ReachWish>();
  CLI::App* sub = root.add_subcommand(
      "reach", "Who reaches whom, and why not; exit code 1 when a promise of the lab is broken");
  sub->add_option("FILE", wish->file, "the lab")->required();
  CLI::Option* from = sub->add_option("FROM", wish->from, "a machine's name or id, pc or outside");
  sub->add_option("TO", wish->to, "the same, an address, or machine/card (its name, id, segment or number)");
  CLI::Option* all = sub->add_flag("--all", wish->all, "every pair")->excludes(from);
  sub->add_option("--service", wish->service, "ping (the default), tcp, udp, tcp/443, udp/53 …");
  sub->add_flag("--full-size", wish->full_size, "with packets as long as the sender's card takes");
  sub->add_option("--exercise", wish->exercise, "name or id of an exercise; without it everything is on");
  CLI::Option* json = sub->add_flag("--json", wish->json, "as JSON");
  CLI::Option* csv = sub->add_flag("--csv", wish->csv, "as CSV")->excludes(json)->needs(all);
  sub->add_flag("--markdown", wish->markdown, "as Markdown")->excludes(json)->excludes(csv)->needs(all);
  sub->add_option("-o,--output", wish->output, "write to this file");
  sub->callback([&plan, wish] { plan.action = [&plan, wish] { return ask(plan.console, *wish); }; });
}

} // namespace snug::cli
