#include "app/cli/command.h"

#include <new>

namespace snug::cli {

namespace {

constexpr std::string_view kFooter = "FILE is a lab (*.snuglab). Exit codes: 0 fine, 1 findings of severity "
                                     "error, 2 usage, 3 unreadable input, "
                                     "4 cannot write, 5 internal.";

// The sub-command that was being read, with the words that lead to it.
std::pair<const CLI::App*, std::string> asked(const CLI::App& root) {
  const CLI::App* at = &root;
  std::string before;
  for (bool deeper = true; deeper;) {
    deeper = false;
    for (const CLI::App* sub : at->get_subcommands()) {
      before += (before.empty() ? "" : " ") + at->get_name();
      at = sub;
      deeper = true;
    }
  }
  return {at, before};
}

// The parser's own complaint, as one line.
int misuse(const Console& console, const CLI::App& root, const CLI::ParseError& e) {
  if (const auto* version = dynamic_cast<const CLI::CallForVersion*>(&e)) {
    console.out << version->what() << '\n';
    return kFine;
  }
  const auto [app, before] = asked(root);
  if (e.get_exit_code() == 0) {
    console.out << app->help(before);
    return kFine;
  }
  std::string line = e.what();
  const std::vector<std::string> rest = root.remaining(true);
  if (!rest.empty() && app == &root) {
    line = "there is no command \"" + rest.front() + "\"";
  } else if (!rest.empty()) {
    line = "not understood:";
    for (const std::string& word : rest) line += " " + word;
  }
  for (char& c : line)
    if (c == '\n') c = ' ';
  console.err << "snuglab-cli: " << line << "; see " << (before.empty() ? "" : before + " ")
              << app->get_name() << " --help\n";
  return kUsage;
}

int parse_and_act(const std::vector<std::string>& args, const Console& console) {
  CLI::App root{
      "Plans a small data centre of virtual machines on one PC: does it fit, which address has each card, "
      "what is wrong.",
      "snuglab-cli"};
  root.footer(std::string(kFooter));
  root.require_subcommand(1);
  root.set_version_flag("--version", "snuglab-cli " SNUG_VERSION);
  Plan plan{console, {}};
  for (const auto add : {add_check, add_table, add_draw, add_addresses, add_new, add_pc, add_changes,
                         add_reach, add_what_if, add_roles, add_fix, add_rules, add_format, add_version})
    add(root, plan);
  std::vector<std::string> backwards(args.rbegin(), args.rend());
  try {
    root.parse(backwards);
  } catch (const CLI::ParseError& e) {
    return misuse(console, root, e);
  }
  return plan.action ? plan.action() : kInternal;
}

} // namespace

int run(const std::vector<std::string>& args, const Console& console) {
  try {
    return parse_and_act(args, console);
  } catch (const std::bad_alloc&) {
    console.err << "snuglab-cli: there is not enough memory for this\n";
  } catch (const std::exception& e) {
    console.err << "snuglab-cli: something went wrong inside the program (" << e.what()
                << "); please report it\n";
  }
  return kInternal;
}

} // namespace snug::cli
