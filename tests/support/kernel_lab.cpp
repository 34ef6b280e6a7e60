#include "tests/support/kernel_lab.h"

namespace snug::test::kernel {

std::string Builder::base(const std::string& segment) const {
  const Json& s = segment_json(segment);
  if (!s.contains("uplink")) return segment;
  const Json* nic = nic_json(s.at("in"), s.at("uplink"));
  if (!nic) throw std::runtime_error("no uplink of " + segment);
  return base(nic->at("segment"));
}

void Builder::add_segments() {
  std::set<std::pair<std::string, std::string>> inner;
  for (const Json& s : t_.at("segments")) {
    know(s, "a segment", {"name", "mtu", "in", "uplink", "mac"});
    const std::string name = s.at("name");
    if (base(name) != name) {
      if (s.value("mtu", 1500) != segment_json(base(name)).value("mtu", 1500))
        cannot("an inner segment with another MTU than the segment it belongs to");
      if (!inner.emplace(s.at("in").get<std::string>(), base(name)).second)
        cannot("two inner networks of one hypervisor on one segment");
      continue;
    }
    Segment made;
    made.name = name;
    made.mtu = s.value("mtu", 1500);
    made.passes_other_macs = Known::yes;
    segments_[name] = add(std::move(made)).id;
  }
}

// Segments joined by cables are one physical LAN.
void Builder::join_links() {
  if (!t_.contains("links")) return;
  for (const Json& link : t_.at("links")) {
    const std::string ends[2] = {link.at(0), link.at(1)};
    Segment* s[2] = {nullptr, nullptr};
    for (int i : {0, 1}) {
      if (segments_.count(ends[i]) == 0 || segment_json(ends[i]).contains("in"))
        return cannot("cables to inner segments");
      s[i] = &segment_of(segments_[ends[i]]);
    }
    if (s[0]->lan && s[0]->lan == s[1]->lan) return cannot("a loop of cables");
    const LanId before = s[1]->lan;
    if (!s[0]->lan) {
      Lan lan;
      lan.medium = Medium::wired;
      lan.has_dhcp = Known::no;
      s[0]->lan = add(std::move(lan)).id;
    }
    for (Segment& other : lab_.segments)
      if (&other == s[1] || (before && other.lan == before)) other.lan = s[0]->lan;
    for (Segment* end : s) end->type = SegmentKind::bridged;
  }
}

void Builder::find_carriers() {
  for (const Json& m : t_.at("machines")) {
    const std::string name = m.at("name");
    Machine made;
    made.name = name;
    machines_[name] = add(std::move(made)).id;
  }
  for (const Json& m : t_.at("machines")) {
    std::set<std::string> carriers;
    for (const Json& nic : m.at("nics")) {
      const std::string in = text(segment_json(nic.at("segment")), "in");
      if (in != m.at("name")) carriers.insert(in);
    }
    if (carriers.size() > 1) cannot("a machine with nics inside and outside a hypervisor");
    if (!carriers.empty() && !carriers.begin()->empty())
      machine_of(m.at("name")).carrier = machines_.at(*carriers.begin());
  }
}

void Builder::fill(Card& c, const Json& nic) {
  know(nic, "a nic",
       {"name", "segment", "addr", "mac", "mtu", "link", "cable", "isolated", "port_security", "tx_offload",
        "dhcp", "dad"});
  c.name = nic.at("name");
  c.mtu = nic.value("mtu", 1500);
  if (nic.contains("mac")) c.mac = parse_mac(nic.at("mac").get<std::string>()).value();
  c.connected = text(nic, "cable") != "unplugged";
  c.separated = flag(nic, "isolated");
  c.own_mac_only = flag(nic, "port_security");
  if (flag(nic, "dad")) out_.assumptions.detects_duplicates = true;
}

namespace {

void add_addresses(Card& c, const Json& nic) {
  for (const Json& a : nic.at("addr")) {
    const auto parsed = parse_address_with_length(a.get<std::string>()).value();
    CardAddress& row = c.addresses.emplace_back();
    row.address = parsed.address;
    row.length = parsed.length;
  }
  if (flag(nic, "dhcp")) c.addresses.emplace_back().kind = AddressKind::dhcp;
}

} // namespace

void Builder::add_nic(const Json& machine, const Json& nic) {
  const std::string owner = machine.at("name"), name = nic.at("name");
  const bool down = text(nic, "link") == "down";
  const auto& all = t_.at("segments");
  const auto is_uplink = [&](const Json& s) { return text(s, "in") == owner && text(s, "uplink") == name; };
  const auto s = std::find_if(all.begin(), all.end(), is_uplink);
  if (down && s == all.end()) return; // as good as not there: no addresses, no routes
  Card c;
  c.machine = machines_.at(owner);
  c.segment = segments_.at(base(nic.at("segment")));
  fill(c, nic);
  c.connected &= !down;
  if (s != all.end()) {
    c.carries.emplace_back().segment = c.segment;
    if (s->contains("mac")) {
      const Mac mac = parse_mac(s->at("mac").get<std::string>()).value();
      if (c.own_mac_only && c.mac != mac) cannot("a bridge with another MAC than its uplink");
      c.mac = mac;
    }
    // An address on a card that is part of a bridge leads nowhere.
    if (!down && (!nic.at("addr").empty() || flag(nic, "dhcp"))) {
      Card lost;
      lost.machine = c.machine;
      lost.mtu = c.mtu;
      lost.name = name + " itself";
      add_addresses(lost, nic);
      add(std::move(lost));
    }
  } else {
    add_addresses(c, nic);
  }
  if (advertised_) c.addresses.emplace_back().kind = AddressKind::slaac;
  cards_[{owner, name}] = add(std::move(c)).id;
}

// The bridge device of an inner segment: the hypervisor's own card there.
void Builder::add_bridge(const Json& machine, const Json& nic) {
  const std::string owner = machine.at("name"), name = nic.at("name");
  const Json& segment = segment_json(nic.at("segment"));
  if (segment.contains("uplink")) {
    const CardId id = card(owner, segment.at("uplink"));
    Card* c = card_of(id);
    if (!c) throw std::runtime_error("no uplink of " + text(segment, "name"));
    if (nic.value("mtu", 1500) != *c->mtu) cannot("a bridge with another MTU than its uplink");
    add_addresses(*c, nic);
    cards_[{owner, name}] = id;
    return;
  }
  Card c;
  c.machine = machines_.at(owner);
  c.segment = segments_.at(nic.at("segment"));
  c.carries.emplace_back().segment = c.segment;
  fill(c, nic);
  if (segment.contains("mac")) c.mac = parse_mac(segment.at("mac").get<std::string>()).value();
  add_addresses(c, nic);
  cards_[{owner, name}] = add(std::move(c)).id;
}

void Builder::add_nics(const Json& machine) {
  const auto is_bridge = [&](const Json& nic) {
    return text(segment_json(nic.at("segment")), "in") == machine.at("name");
  };
  for (const Json& nic : machine.at("nics"))
    if (!is_bridge(nic)) add_nic(machine, nic);
  for (const Json& nic : machine.at("nics"))
    if (is_bridge(nic)) add_bridge(machine, nic);
}

} // namespace snug::test::kernel
