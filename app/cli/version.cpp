#include "app/cli/command.h"

namespace snug::cli {

void add_version(CLI::App& root, Plan& plan) {
  CLI::App* sub = root.add_subcommand("version", "The version of this program and of the files it reads");
  sub->callback([&plan] {
    plan.action = [&plan] {
      return deliver(plan.console, {},
                     "snuglab-cli " SNUG_VERSION "\nreads and writes format version " +
                         std::to_string(kFormatVersion) + "\n");
    };
  });
}

} // namespace snug::cli
