#include "tests/kernel/kernel_net.h"

#include <algorithm>
#include <unistd.h>

namespace snug::test {

// What is no machine: physical LANs and their routers, the PC, translators, what lies beyond.

MachineId router_of(const Lab& lab, LanId lan, std::int32_t vlan) {
  const auto it = std::find_if(lab.lans.begin(), lab.lans.end(), [&](const Lan& l) { return l.id == lan; });
  const auto place = static_cast<std::uint32_t>(it - lab.lans.begin());
  return {4'000'000 + place * 5000 + static_cast<std::uint32_t>(vlan)};
}

void KernelNet::add_places() {
  add_lans();
  add_beyond();
  add_pc();
  add_translators();
  add_lan_routers();
}

// A card of a system that is no machine.
void KernelNet::wire(Space& own, const std::string& name, const std::string& bridge, int mtu) {
  const std::string plug = "p" + name, size = std::to_string(mtu);
  wires_.batch += "link add " + plug + " mtu " + size + " type veth peer name " + name + " mtu " + size +
                  " netns /proc/" + std::to_string(getpid()) + "/fd/" + std::to_string(own.net) + "\n";
  wires_.batch += "link set " + plug + " master " + bridge + "\nlink set " + plug + " up\n";
  wires_.awaited.push_back(plug);
  own.batch += "link set " + name + " up\n";
  own.awaited.push_back(name);
  own.devices.push_back(name);
}

void KernelNet::masquerade(Space& s, const std::string& device) {
  s.translate +=
      "add table ip n\nadd chain ip n p { type nat hook postrouting priority 100; }\nadd rule ip n p "
      "oifname " +
      device + " masquerade\n";
}

std::string KernelNet::lan_bridge(const Segment& s) const {
  const auto it = lans_.find({s.lan, s.vlan});
  return s.type != SegmentKind::bridged || it == lans_.end() ? "" : it->second;
}

// One network for each LAN and VLAN; cables to segments take what a veth can.
void KernelNet::add_lans() {
  const auto add = [&](LanId lan, std::int32_t vlan) {
    std::string& name = lans_[{lan, vlan}];
    if (!name.empty()) return;
    name = "l" + std::to_string(lans_.size());
    wires_.batch += "link add " + name + " type bridge mcast_snooping 0\nlink set " + name + " up\n";
  };
  for (const Lan& l : lab_.lans) add(l.id, 0);
  for (const Segment& s : lab_.segments) {
    if (s.type != SegmentKind::bridged || !find<Lan>(lab_, s.lan)) continue;
    add(s.lan, s.vlan);
    const std::string id = std::to_string(s.id.number), a = "a" + id, z = "z" + id;
    wires_.batch.append("link add ").append(a).append(" mtu 65535 type veth peer name ").append(z);
    wires_.batch += " mtu 65535\n";
    for (const auto& [end, bridge] : {std::pair(a, bridge_in({}, s.id)), std::pair(z, lan_bridge(s))}) {
      wires_.batch.append("link set ").append(end).append(" master ").append(bridge);
      wires_.batch.append("\nlink set ").append(end).append(" up\n");
      wires_.awaited.push_back(end);
    }
  }
}

void KernelNet::add_beyond() {
  wires_.batch += "link add beyond type bridge mcast_snooping 0\nlink set beyond up\n";
  open_system(kBeyond);
  Space& s = spaces_.at(kBeyond);
  wire(s, "beyond", "beyond", 1500);
  s.batch += "addr add 192.0.2.1/32 dev beyond\nroute add default dev beyond\n"
             "addr add 2001:db8:0:ff::1/128 dev beyond nodad\nroute add ::/0 dev beyond\n";
}

void KernelNet::go_beyond(Space& s, const std::string& device, bool v6) {
  const std::string number = std::to_string(next_beyond_++);
  s.batch += "addr add 192.0.2." + number + "/32 dev " + device + "\nroute add default dev " + device + "\n";
  if (v6) s.batch += "addr add 2001:db8:0:ff::" + number + "/128 dev " + device + " nodad\n";
  s.batch += "route add ::/0 dev " + device + "\n";
}

void KernelNet::add_given(MachineId system, AnyId card, const std::string& device) {
  for (const Given& g : given_)
    if (g.system == system && g.card == card)
      spaces_.at(system).batch +=
          "addr add " + to_text(g.address) + "/" + std::to_string(g.length) + " dev " + device + "\n";
}

// A socket where the plan says so, a card on each LAN without one.
void KernelNet::add_pc() {
  open_system(kPc);
  Space& s = spaces_.at(kPc);
  enter(s);
  for (const char* family : {"ipv4", "ipv6"})
    set(s, std::string(family) + "/conf/all/forwarding", lab_.pc.forwards ? "1" : "0");
  std::vector<std::string> met;
  for (const Segment& segment : lab_.segments) {
    if (!segment.pc_socket) continue;
    const std::string name = "k" + std::to_string(segment.id.number);
    wire(s, name, bridge_in({}, segment.id), segment.mtu);
    if (segment.pc_address4)
      s.batch += "addr add " + to_text(*segment.pc_address4) + "/" +
                 std::to_string(segment.prefix4->length()) + " dev " + name + "\n";
    add_given(kPc, segment.id, name);
    met.push_back(lan_bridge(segment));
  }
  for (const auto& [key, bridge] : lans_) {
    if (key.second != 0 || std::find(met.begin(), met.end(), bridge) != met.end()) continue;
    const std::string name = "k" + std::to_string(key.first.number);
    wire(s, name, bridge, 1500);
    add_given(kPc, key.first, name);
  }
  for (const Given& g : given_)
    if (g.system == kPc && g.gateway) s.batch += "route add default via " + to_text(*g.gateway) + "\n";
  const auto translates = [](const Segment& segment) { return segment.type == SegmentKind::nat; };
  if (!lab_.lans.empty() || std::none_of(lab_.segments.begin(), lab_.segments.end(), translates)) return;
  wire(s, "way", "beyond", 1500);
  go_beyond(s, "way", lab_.pc.forwards);
}

void KernelNet::add_translators() {
  for (const Segment& segment : lab_.segments) {
    if (segment.type != SegmentKind::nat) continue;
    const std::string inner = "i" + std::to_string(segment.id.number),
                      outer = "o" + std::to_string(segment.id.number);
    const MachineId me = translator_of(segment.id);
    open_system(me);
    Space& s = spaces_.at(me);
    enter(s);
    set(s, "ipv4/conf/all/forwarding", "1");
    wire(s, inner, bridge_in({}, segment.id), segment.mtu);
    s.batch += "addr add " + to_text(*segment.translator4) + "/" + std::to_string(segment.prefix4->length()) +
               " dev " + inner + "\n";
    const bool only = !segment.lan && lab_.lans.size() == 1;
    const auto lan = lans_.find({only ? lab_.lans.front().id : segment.lan, 0});
    wire(s, outer, lan == lans_.end() ? "beyond" : lan->second, 1500);
    if (lan == lans_.end()) {
      go_beyond(s, outer, false);
    } else {
      add_given(me, segment.id, outer);
      for (const Given& g : given_)
        if (g.system == me && g.gateway) s.batch += "route add default via " + to_text(*g.gateway) + "\n";
    }
    masquerade(s, outer);
  }
}

void KernelNet::add_lan_routers() {
  for (const auto& [key, bridge] : lans_) {
    const Lan& lan = *find<Lan>(lab_, key.first);
    const MachineId me = router_of(lab_, key.first, key.second);
    open_system(me);
    Space& s = spaces_.at(me);
    enter(s);
    for (const char* family : {"ipv4", "ipv6"}) set(s, std::string(family) + "/conf/all/forwarding", "1");
    const std::string in = "n" + bridge, out = "w" + bridge; // names of plugs are unique
    wire(s, in, bridge, 1500);
    if (lan.gateway4 && lan.prefix4)
      s.batch += "addr add " + to_text(*lan.gateway4) + "/" + std::to_string(lan.prefix4->length()) +
                 " dev " + in + "\n";
    wire(s, out, "beyond", 1500);
    go_beyond(s, out, true);
    masquerade(s, out);
  }
}

} // namespace snug::test
