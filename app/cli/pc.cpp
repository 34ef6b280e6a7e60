#include "app/cli/command.h"
#include "core/model/json_text.h"
#include "core/probe/facts.h"
#include "core/report/table.h"

namespace snug::cli {

namespace {

std::string known(const std::optional<bool>& fact) { return !fact ? "unknown" : *fact ? "yes" : "no"; }
std::string known(const std::optional<int>& fact) { return fact ? std::to_string(*fact) : "unknown"; }
std::string known_mib(const std::optional<std::int64_t>& fact) { return fact ? show_mib(*fact) : "unknown"; }

std::string drive(const std::optional<DriveKind>& kind) {
  constexpr std::array<std::string_view, 4> kWords{"spinning", "usb", "flash", "nvme"};
  return kind ? std::string(kWords[static_cast<std::size_t>(*kind)]) : "unknown";
}
std::string medium(const std::optional<LinkMedium>& m) {
  return !m ? "unknown" : *m == LinkMedium::wired ? "wired" : "wireless";
}

std::string card_text(const CardFacts& c) {
  std::string out = medium(c.medium) + ", " + (c.up ? (*c.up ? "up" : "down") : "unknown whether up");
  if (c.mtu) out += ", MTU " + std::to_string(*c.mtu);
  for (const Prefix& p : c.subnets) out += ", " + to_text(p);
  for (const Address& a : c.gateways) out += ", gateway " + to_text(a);
  return out;
}

Table fact_table(const PcFacts& f) {
  Table t;
  t.title = "This PC";
  t.columns = {{"fact", "Fact"}, {"value", "Value"}};
  const auto row = [&t](std::string name, std::string value) {
    t.rows.push_back({AnyId{Kind::pc, 0}, {std::move(name), std::move(value)}});
  };
  row("memory installed", known_mib(f.memory.installed_mib));
  row("memory usable", known_mib(f.memory.usable_mib));
  row("cores", known(f.processor.cores));
  row("threads", known(f.processor.threads));
  row("efficiency cores", known(f.processor.efficiency_cores));
  row("64-bit", known(f.processor.is_64_bit));
  row("hardware virtualization seen by the system", known(f.processor.virtualization));
  row("firmware switch for it", known(f.processor.firmware_switch));
  row("already under a hypervisor", known(f.processor.under_hypervisor));
  row("second-level address translation", known(f.processor.second_level_translation));
  row("nested virtualization", known(f.processor.nested_virtualization));
  if (!f.volumes) row("volumes", "unknown");
  for (const VolumeFacts& v : f.volumes.value_or(std::vector<VolumeFacts>{}))
    row("volume " + v.mount_point,
        drive(v.kind) + ", " + known_mib(v.size_mib) + ", " + known_mib(v.free_mib) + " free");
  if (!f.cards) row("network cards", "unknown");
  for (const CardFacts& c : f.cards.value_or(std::vector<CardFacts>{})) row("card " + c.name, card_text(c));
  return t;
}

std::string lines_of(const Table& t) {
  std::string out;
  for (const TableRow& row : t.rows) {
    std::string line = cell_text(row.cells[0]);
    line.resize(std::max<std::size_t>(line.size() + 2, 46), ' ');
    out += line + cell_text(row.cells[1]) + "\n";
  }
  return out;
}

} // namespace

void add_pc(CLI::App& root, Plan& plan) {
  auto as_json = std::make_shared<bool>(false);
  CLI::App* sub = root.add_subcommand("pc", "Facts of this computer; unknown where the system does not tell");
  sub->add_flag("--json", *as_json, "as JSON");
  sub->callback([&plan, as_json] {
    plan.action = [&plan, as_json] {
      const Table t = fact_table(probe(this_pc()));
      return deliver(plan.console, {}, *as_json ? json(t) : lines_of(t));
    };
  });
}

} // namespace snug::cli
