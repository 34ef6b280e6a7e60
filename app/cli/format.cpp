#include "app/cli/command.h"
#include "core/document/schema.h"

namespace snug::cli {

void add_format(CLI::App& root, Plan& plan) {
  auto schema = std::make_shared<bool>(false);
  CLI::App* sub = root.add_subcommand("format", "The file format: every field with unit, range and default");
  sub->add_flag("--schema", *schema, "as a JSON Schema");
  sub->callback([&plan, schema] {
    plan.action = [&plan, schema] {
      return deliver(plan.console, {}, *schema ? json_schema() : format_page());
    };
  });
}

} // namespace snug::cli
