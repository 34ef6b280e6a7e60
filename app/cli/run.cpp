#include "app/cli/command.h"
#include "core/base/clean.h"
#include "core/base/likeness.h"
#include "core/text/base_text.h"
#include "core/text/cli_text.h"

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

std::vector<std::string> option_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::Option* option : app.get_options()) {
    for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    for (const std::string& name : option->get_snames()) names.push_back("-" + name);
  }
  return names;
}

std::vector<std::string> command_names(const CLI::App& app) {
  std::vector<std::string> names;
  for (const CLI::App* sub : app.get_subcommands([](const CLI::App*) { return true; }))
    names.push_back(sub->get_name());
  return names;
}

// About the first word that nothing was made of.
Message left_over(const CLI::App& app, const std::string& word) {
  const bool option = word.starts_with("-");
  const std::vector<std::string> commands = option ? std::vector<std::string>() : command_names(app);
  if (!option && commands.empty()) return say(text::cli_word_more, word);
  const std::string name = word.substr(0, word.find('='));
  const std::string near = nearest_word(name, option ? option_names(app) : commands);
  if (near.empty()) return say(option ? text::cli_no_option : text::cli_no_command, name);
  return say(option ? text::cli_option_meant : text::cli_command_meant, name, near);
}

// What is wrong, on one line, and which help says how it is right.
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
  const std::vector<std::string> rest = root.remaining(true);
  const Message what =
      rest.empty() ? say(text::plain, clean(e.what())) : left_over(*app, clean(rest.front()));
  const std::string help = (before.empty() ? "" : before + " ") + app->get_name() + " --help";
  return complain(console, Problem{say(text::cli_misuse, english(what), help), {}, 0, 0, {}}, kUsage);
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
    return complain(console, Problem{say(text::cli_memory), {}, 0, 0, {}}, kInternal);
  } catch (const std::exception& e) {
    return complain(console, Problem{say(text::cli_internal, clean(e.what())), {}, 0, 0, {}}, kInternal);
  }
}

} // namespace snug::cli
