#include "tests/support/kernel_lab.h"

#include <fstream>

namespace snug::test {

using kernel::address_of, kernel::Builder, kernel::flag, kernel::Json, kernel::text;

namespace {

void add_observation(const Json& o, const Builder& b, KernelCase& out) {
  static const std::set<std::string> kKnown{
      "from",          "target", "to",   "ok",          "class",  "detail",    "request_arrived_at",
      "size",          "df",     "warm", "wait_before", "varies", "also_seen", "naive_wiring",
      "naive_forward", "proto",  "dev",  "ttl"};
  for (const auto& [key, value] : o.items())
    if (kKnown.count(key) == 0) out.not_expressible.push_back("an observation with " + key);
  Observation seen;
  ReachQuestion& q = seen.question;
  q.from = b.machines().at(o.at("from"));
  q.to = b.machines().at(o.at("to"));
  q.target = address_of(o.at("target"));
  if (o.contains("dev")) q.by = b.card(o.at("from"), o.at("dev"));
  const std::int32_t headers = q.target->is_v4() ? 28 : 48;
  q.size = o.value("size", 56) + headers;
  q.keep_whole = flag(o, "df");
  q.hop_limit = o.value("ttl", 64);
  q.keep_neighbours = flag(o, "warm");
  if (text(o, "proto") == "tcp") {
    q.transport = Transport::tcp;
    q.full_size = true;
  }
  seen.ok = o.at("ok");
  seen.varies = flag(o, "varies");
  const auto arrived = o.value("request_arrived_at", std::vector<std::string>{});
  seen.arrived = std::find(arrived.begin(), arrived.end(), o.at("to")) != arrived.end();
  seen.text = text(o, "from") + " to " + text(o, "target") + " of " + text(o, "to") +
              (o.contains("size") ? ", " + o.at("size").dump() + " octets" : "") +
              (q.keep_whole ? ", whole" : "") + (o.contains("proto") ? ", tcp" : "");
  out.observed.push_back(std::move(seen));
}

} // namespace

std::vector<KernelCase> read_kernel_cases(const std::string& path) {
  std::ifstream file(path);
  if (!file) throw std::runtime_error("cannot read " + path);
  const Json all = Json::parse(file);
  if (all.at("format") != "kernel-reachability 1") throw std::runtime_error(path + " has another format");
  std::vector<KernelCase> out;
  for (const Json& c : all.at("cases")) {
    KernelCase& made = out.emplace_back();
    made.name = c.at("name");
    Builder b(c.at("topology"), made);
    b.build();
    for (const Json& o : c.at("observed")) add_observation(o, b, made);
  }
  return out;
}

} // namespace snug::test
