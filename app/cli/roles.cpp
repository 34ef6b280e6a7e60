#include "app/cli/command.h"
#include "core/model/json_text.h"
#include "core/report/table.h"
#include "core/roles/known_roles.h"
#include "core/text/cli_text.h"

#include <algorithm>

namespace snug::cli {

namespace {

std::string words(const std::vector<Need>& needs) {
  std::string out;
  for (const Need& n : needs) out += (out.empty() ? "" : ", ") + n.service;
  return out;
}
std::string words(const std::vector<Offer>& offers) {
  std::string out;
  for (const Offer& o : offers)
    if (out.find(o.service) == std::string::npos) out += (out.empty() ? "" : ", ") + o.service;
  return out;
}

Table role_table(const std::vector<Role>& roles) {
  Table t;
  t.title = "Roles";
  t.columns = {{"key", "Key"},
               {"title", "Title"},
               {"least_mib", "Least (MiB)"},
               {"usual_mib", "Usual (MiB)"},
               {"lean_least_mib", "Lean, least (MiB)"},
               {"lean_usual_mib", "Lean, usual (MiB)"},
               {"processors", "Processors"},
               {"disk_mib", "Disk (MiB)"},
               {"offers", "Offers"},
               {"needs", "Needs"},
               {"source", "Source"}};
  for (const Role& r : roles)
    t.rows.push_back({{},
                      {r.key, r.title, r.current_least, r.current_usual, r.lean_least, r.lean_usual,
                       std::int64_t{r.processors}, r.disk, words(r.offers), words(r.needs), r.source}});
  return t;
}

int write_roles(const Console& console, const std::string& key, bool as_json) {
  const auto roles = known_roles(own_roles_file());
  if (!roles) return complain(console, roles.error(), kUnreadable);
  if (key.empty()) {
    const Table t = role_table(*roles);
    return deliver(console, {}, as_json ? json(t) : markdown(t));
  }
  const auto role = std::find_if(roles->begin(), roles->end(), [&](const Role& r) { return r.key == key; });
  if (role == roles->end())
    return complain(console, Problem{say(text::cli_no_role, key), {}, 0, 0, {}}, kUsage);
  // As it stands in a document's "roles", with an id to be changed.
  Role copy = *role;
  copy.id.number = 1;
  std::string out;
  append_json_object(out, info<Role>(), &copy);
  return deliver(console, {}, out + "\n");
}

} // namespace

void add_roles(CLI::App& root, Plan& plan) {
  auto key = std::make_shared<std::string>();
  auto as_json = std::make_shared<bool>(false);
  CLI::App* sub = root.add_subcommand("roles", "The catalogue of roles; one of them as a lab holds it");
  sub->add_option("KEY", *key, "one role");
  sub->add_flag("--json", *as_json, "the catalogue as JSON");
  sub->callback([&plan, key, as_json] {
    plan.action = [&plan, key, as_json] { return write_roles(plan.console, *key, *as_json); };
  });
}

} // namespace snug::cli
