#include "tests/support/kernel_lab.h"

namespace snug::test::kernel {

namespace {

// The nic's name in "net.ipv4.conf.NIC.forwarding"; nothing where the key is another one.
std::string nic_in(const std::string& key, const std::string& prefix, const std::string& suffix) {
  if (!key.starts_with(prefix) || !key.ends_with(suffix) || key.size() <= prefix.size() + suffix.size())
    return {};
  return key.substr(prefix.size(), key.size() - prefix.size() - suffix.size());
}

} // namespace

void Builder::set_sysctl(const std::string& machine, const std::string& key, const Json& value) {
  const bool on = value != 0;
  const auto each = [&](auto use) {
    for (Card& c : lab_.cards)
      if (c.machine == machines_.at(machine)) use(c);
  };
  const std::string nic4 = nic_in(key, "net.ipv4.conf.", ".forwarding");
  if (key == "net.ipv4.ip_forward" || key == "net.ipv4.conf.all.forwarding") {
    each([&](Card& c) { c.forwards4 = on; });
  } else if (key == "net.ipv6.conf.all.forwarding") {
    each([&](Card& c) { c.forwards6 = on; });
  } else if (!nic4.empty()) {
    if (Card* c = card_of(card(machine, nic4))) c->forwards4 = on;
  } else if (const std::string nic = nic_in(key, "net.ipv6.conf.", ".forwarding"); !nic.empty()) {
    // Alone it forwards nothing (seen in the kernel); it makes the nic deaf to advertisements.
    if (Card* c = card_of(card(machine, nic)); c && on)
      std::erase_if(c->addresses, [](const CardAddress& a) { return a.kind == AddressKind::slaac; });
  } else if (nic_in(key, "net.ipv4.conf.", ".rp_filter").empty() && // see set_filter
             key != "net.bridge.bridge-nf-call-iptables") {         // without filters it does nothing
    cannot("sysctl " + key);
  }
}

// The higher number of all's and the nic's own counts. The model has one filter a machine.
void Builder::set_filter(const Json& machine) {
  constexpr ReverseFilter kFilters[3] = {ReverseFilter::off, ReverseFilter::strict, ReverseFilter::loose};
  const int asked = machine.value("rp_filter", 0);
  const Json keys = machine.value("sysctl", Json::object());
  const auto set_for = [&](const std::string& nic, int otherwise) {
    return keys.value("net.ipv4.conf." + nic + ".rp_filter", otherwise);
  };
  std::set<int> filters;
  for (const Json& nic : machine.at("nics"))
    filters.insert(std::max(set_for("all", asked), set_for(nic.at("name"), set_for("default", asked))));
  if (filters.size() > 1) cannot("a reverse-path filter on one nic of several");
  if (!filters.empty())
    machine_of(machine.at("name")).reverse_filter = kFilters[std::clamp(*filters.rbegin(), 0, 2)];
}

void Builder::set_forwarding(const Json& machine) {
  const std::string name = machine.at("name");
  const Json f = machine.value("forwarding", Json(false));
  const bool v4 = f == true || f == "v4", v6 = f == true || f == "v6";
  for (Card& c : lab_.cards)
    if (c.machine == machines_.at(name)) {
      c.forwards4 = v4;
      c.forwards6 = v6;
    }
  set_filter(machine);
  if (machine.contains("sysctl"))
    for (const auto& [key, value] : machine.at("sysctl").items()) set_sysctl(name, key, value);
  if (machine.contains("nat"))
    for (const Json& n : machine.at("nat")) {
      know(n, "translation", {"out"});
      if (Card* c = card_of(card(name, n.at("out")))) c->translates = true;
    }
}

void Builder::add_route(const std::string& machine, const Json& route, const std::string& to) {
  if (route.is_object()) know(route, "a route", {"to", "via", "dev", "metric", "onlink"});
  Route r;
  const std::string via = route.is_string() ? route.get<std::string>() : text(route, "via");
  if (!via.empty()) r.via = address_of(via);
  if (!to.empty())
    r.to = parse_prefix(to).value();
  else if (r.via && !r.via->is_v4())
    r.to = Prefix::of(Address::v6(0, 0), 0);
  if (route.is_object()) {
    r.metric = route.value("metric", 0);
    r.on_link = flag(route, "onlink");
    if (route.contains("dev")) {
      r.card = card(machine, route.at("dev"));
      if (!r.card) return; // by a nic that is down: refused
    }
  }
  machine_of(machine).routes.push_back(r);
}

void Builder::add_routes(const Json& machine) {
  const std::string name = machine.at("name");
  if (machine.contains("gateway"))
    for (const Json& g : machine.at("gateway")) add_route(name, g, {});
  if (machine.contains("routes"))
    for (const Json& r : machine.at("routes")) {
      const std::string to = r.at("to");
      add_route(name, r,
                to == "default" ? ""
                : to.find('/') != std::string::npos
                    ? to
                    : to + (to.find(':') != std::string::npos ? "/128" : "/32"));
    }
}

Card* Builder::holder_of(const std::string& machine, const Address& a) {
  for (Card& c : lab_.cards)
    if (machine.empty() || c.machine == machines_.at(machine))
      for (const CardAddress& row : c.addresses)
        if (row.address == a) return &c;
  return nullptr;
}

// The card of a relay whose network a range is for.
Card* Builder::relay_into(const Prefix& p) {
  for (const Json& m : t_.at("machines"))
    if (m.contains("dhcp_relay"))
      for (const Json& r : m.at("dhcp_relay"))
        if (p.contains(address_of(r.at("local")))) return holder_of(m.at("name"), address_of(r.at("local")));
  return nullptr;
}

void Builder::add_dhcp(const std::string& machine, const Json& server) {
  know(server, "a DHCP server", {"nic", "range", "gateway"});
  Card* c = card_of(card(machine, server.at("nic")));
  if (!c) return;
  const std::string range = server.at("range");
  const std::size_t a = range.find(','), b = range.find(',', a + 1);
  RangeRow row;
  row.first = address_of(range.substr(0, a));
  row.last = address_of(range.substr(a + 1, b - a - 1));
  c->dhcp = DhcpDuty::server;
  c->ranges.push_back(row);
  if (!server.contains("gateway")) return;
  const Prefix net = Prefix::of(row.first, parse_mask(range.substr(b + 1)).value());
  const bool direct = std::any_of(c->addresses.begin(), c->addresses.end(), [&](const CardAddress& r) {
    return r.address && net.contains(*r.address);
  });
  const Card* there = direct ? c : relay_into(net);
  if (!there) return;
  Segment& s = segment_of(there->segment);
  const Address gateway = address_of(server.at("gateway"));
  if (!s.gateway4) s.gateway4 = gateway;
}

void Builder::add_servers(const Json& machine) {
  const std::string name = machine.at("name");
  if (machine.contains("dhcp_server"))
    for (const Json& s : machine.at("dhcp_server")) add_dhcp(name, s);
  if (machine.contains("dhcp_relay"))
    for (const Json& r : machine.at("dhcp_relay")) {
      know(r, "a relay", {"local", "server"});
      if (Card* c = holder_of(name, address_of(r.at("local")))) {
        c->dhcp = DhcpDuty::relay;
        c->relay_to = address_of(r.at("server"));
      }
    }
  if (machine.contains("ra_server"))
    for (const Json& r : machine.at("ra_server")) {
      know(r, "router advertisements", {"nic", "prefix"});
      Card* c = card_of(card(name, r.at("nic")));
      if (!c) continue;
      c->advertises = true;
      segment_of(c->segment).prefix6 = Prefix::of(address_of(r.at("prefix")), 64);
    }
}

void Builder::build() {
  know(t_, "a topology", {"segments", "machines", "links"});
  out_.assumptions.detects_duplicates = false; // off in the cases unless they say `dad`
  for (const Json& m : t_.at("machines")) {
    know(m, "a machine",
         {"name", "nics", "gateway", "routes", "forwarding", "rp_filter", "nat", "sysctl", "dhcp_server",
          "dhcp_relay", "ra_server", "accept_dad"});
    advertised_ |= m.contains("ra_server");
  }
  add_segments();
  join_links();
  find_carriers();
  for (const Json& m : t_.at("machines")) add_nics(m);
  for (const Json& m : t_.at("machines")) {
    set_forwarding(m);
    add_routes(m);
    add_servers(m);
  }
}

} // namespace snug::test::kernel
