#include "tests/kernel/kernel_net.h"

#include <algorithm>
#include <arpa/inet.h>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <fstream>
#include <net/if.h>
#include <netinet/icmp6.h>
#include <netinet/in.h>
#include <netinet/ip_icmp.h>
#include <sched.h>
#include <stdexcept>
#include <sys/ioctl.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

namespace snug::test {

namespace {

[[noreturn]] void fail(const std::string& what) {
  throw std::runtime_error(what + ": " + std::strerror(errno));
}

std::string number(auto id) { return std::to_string(id.number); }

// Runs a program in a namespace with text as its input; what it says on standard error.
std::string run_in(int net, const std::vector<const char*>& program, const std::string& input) {
  int in[2], err[2];
  // Other threads fork too: what their children inherit would stay open.
  if (pipe2(in, O_CLOEXEC) != 0 || pipe2(err, O_CLOEXEC) != 0) fail("pipe");
  const pid_t child = fork();
  if (child == 0) {
    dup2(in[0], 0);
    dup2(err[1], 2);
    if (setns(net, CLONE_NEWNET) != 0) _exit(126);
    execvp(program[0], const_cast<char* const*>(program.data()));
    _exit(127);
  }
  close(in[0]);
  close(err[1]);
  for (std::size_t at = 0; at < input.size();) {
    const ssize_t n = write(in[1], input.data() + at, input.size() - at);
    if (n <= 0) break;
    at += static_cast<std::size_t>(n);
  }
  close(in[1]);
  std::string said;
  char buffer[4096];
  for (ssize_t n = 0; (n = read(err[0], buffer, sizeof buffer)) > 0;)
    said.append(buffer, static_cast<std::size_t>(n));
  close(err[0]);
  int status = 0;
  waitpid(child, &status, 0);
  if (WIFEXITED(status) && WEXITSTATUS(status) >= 126)
    throw std::runtime_error(std::string(program[0]) + " cannot be run");
  return said;
}

bool write_file(const std::string& path, const std::string& text) {
  std::ofstream out(path);
  out << text;
  return static_cast<bool>(out.flush());
}

} // namespace

std::string KernelNet::why_not() {
  const unsigned user = getuid(), group = getgid();
  if (geteuid() != 0) {
    if (unshare(CLONE_NEWUSER) != 0)
      return "neither root nor user namespaces: " + std::string(std::strerror(errno));
    write_file("/proc/self/setgroups", "deny");
    write_file("/proc/self/uid_map", "0 " + std::to_string(user) + " 1");
    write_file("/proc/self/gid_map", "0 " + std::to_string(group) + " 1");
  }
  try {
    Lab lab;
    Machine m;
    m.id.number = 1;
    Segment s;
    s.id.number = 2;
    Card c;
    c.id.number = 3;
    c.machine = m.id;
    c.segment = s.id;
    c.mac = Mac(0x0200'0000'0001ULL);
    c.translates = true;
    lab.machines.push_back(m);
    lab.segments.push_back(s);
    lab.cards.push_back(c);
    KernelNet net(lab, {m.id});
  } catch (const std::exception& e) {
    return e.what();
  }
  return {};
}

void KernelNet::open_space(Space& s) {
  if (unshare(CLONE_NEWNET) != 0) fail("a network namespace");
  s.net = open("/proc/thread-self/ns/net", O_RDONLY | O_CLOEXEC);
  s.icmp4 = socket(AF_INET, SOCK_RAW | SOCK_CLOEXEC | SOCK_NONBLOCK, IPPROTO_ICMP);
  s.icmp6 = socket(AF_INET6, SOCK_RAW | SOCK_CLOEXEC | SOCK_NONBLOCK, IPPROTO_ICMPV6);
  s.control = socket(AF_INET, SOCK_DGRAM | SOCK_CLOEXEC, 0);
  s.flush = open("/proc/sys/net/ipv4/route/flush", O_WRONLY | O_CLOEXEC);
  if (s.net < 0 || s.icmp4 < 0 || s.icmp6 < 0 || s.control < 0) fail("sockets in a namespace");
  const int room = 4 << 20;
  for (const int socket : {s.icmp4, s.icmp6}) setsockopt(socket, SOL_SOCKET, SO_RCVBUF, &room, sizeof room);
}

void KernelNet::enter(const Space& s) const {
  if (setns(s.net, CLONE_NEWNET) != 0) fail("entering a namespace");
}

void KernelNet::set(const Space&, const std::string& key, const std::string& value) const {
  write_file("/proc/sys/net/" + key, value);
}

KernelNet::KernelNet(const Lab& lab, const std::vector<MachineId>& on, std::vector<Given> given)
    : lab_(lab), given_(std::move(given)), home_(open("/proc/thread-self/ns/net", O_RDONLY | O_CLOEXEC)),
      tag_(static_cast<std::uint16_t>(gettid())) {
  open_space(wires_);
  set(wires_, "ipv6/conf/default/disable_ipv6", "1");
  set(wires_, "bridge/bridge-nf-call-iptables", "0");
  set(wires_, "bridge/bridge-nf-call-ip6tables", "0");
  for (const MachineId m : on) open_system(m);
  add_bridges();
  for (const Card& c : lab.cards)
    if (spaces_.count(c.machine) != 0) add_card(c);
  add_places();
  run(wires_);
  for (auto& [m, s] : spaces_) run(s);
  for (const Machine& m : lab.machines)
    if (spaces_.count(m.id) != 0) settle(m);
  enter({home_, -1, -1, -1, -1, {}, {}, {}, {}});
  wait_for(wires_);
  for (const auto& [m, s] : spaces_) wait_for(s);
}

void KernelNet::open_system(MachineId m) {
  open_space(spaces_[m]);
  Space& s = spaces_[m];
  s.batch = "link set lo up\n";
  for (const char* key : {"bridge/bridge-nf-call-iptables", "bridge/bridge-nf-call-ip6tables"})
    set(s, key, "0");
  for (const char* family : {"ipv4", "ipv6"}) {
    const std::string neigh = std::string(family) + "/neigh/default/";
    set(s, neigh + "retrans_time_ms", "30");
    set(s, neigh + "delay_first_probe_time", "60");
  }
  for (const char* conf : {"ipv4/conf/default/", "ipv4/conf/all/"}) {
    set(s, std::string(conf) + "rp_filter", "0");
    set(s, std::string(conf) + "accept_redirects", "0");
    set(s, std::string(conf) + "send_redirects", "0");
  }
  for (const char* key :
       {"accept_ra", "accept_dad", "dad_transmits", "accept_redirects", "router_solicitations"})
    set(s, std::string("ipv6/conf/default/") + key, "0");
  set(s, "ipv4/icmp_ratelimit", "0");
}

// The kernel learns later, and on its own time, that a card has a carrier; IPv6 is deaf until then.
void KernelNet::wait_for(const Space& s) {
  for (const std::string& device : s.awaited)
    for (int left = 500; left > 0; --left) {
      ifreq r{};
      std::strncpy(r.ifr_name, device.c_str(), IFNAMSIZ - 1);
      if (ioctl(s.control, SIOCGIFFLAGS, &r) != 0 || (r.ifr_flags & IFF_RUNNING) != 0) break;
      usleep(10'000);
    }
}

KernelNet::~KernelNet() {
  const auto end = [](const Space& s) {
    for (const int f : {s.net, s.icmp4, s.icmp6, s.control, s.flush})
      if (f >= 0) close(f);
  };
  end(wires_);
  for (const auto& [m, s] : spaces_) end(s);
  if (setns(home_, CLONE_NEWNET) == 0) close(home_);
}

// Errors of single lines are the kernel's refusals, which the plan must know too; only a program that cannot
// run is an error here.
void KernelNet::run(Space& s) const {
  if (s.batch.empty()) return;
  run_in(s.net, {"ip", "-force", "-batch", "-", nullptr}, s.batch);
  if (!s.translate.empty())
    if (const std::string said = run_in(s.net, {"nft", "-f", "-", nullptr}, s.translate); !said.empty())
      throw std::runtime_error("nft: " + said);
  s.batch.clear();
}

std::string KernelNet::bridge_in(MachineId carrier, SegmentId s) const {
  if (!carrier) return "s" + number(s);
  for (const Machine& guest : lab_.machines)
    if (guest.carrier == carrier)
      for (const Card& c : lab_.cards)
        if (c.machine == guest.id && c.segment == s) return "b" + number(s);
  return {};
}

std::string KernelNet::device_of(const Card& c) const {
  const bool joins = std::any_of(c.carries.begin(), c.carries.end(),
                                 [&](const SegmentTag& t) { return t.segment == c.segment; });
  const std::string inner = joins ? bridge_in(c.machine, c.segment) : "";
  return inner.empty() ? "c" + number(c.id) : inner;
}

void KernelNet::add_bridges() {
  const auto bridge = [](Space& s, const std::string& name) {
    s.batch += "link add " + name + " type bridge mcast_snooping 0\n";
    s.batch += "link set " + name + " up\n";
  };
  for (const Segment& s : lab_.segments) bridge(wires_, bridge_in({}, s.id));
  for (auto& [m, space] : spaces_)
    for (const Segment& s : lab_.segments)
      if (const std::string name = bridge_in(m, s.id); !name.empty()) {
        bridge(space, name);
        // Without a card of the hypervisor in it, it is a switch alone: the hypervisor does not hear there.
        const auto joins = [&, machine = m](const Card& c) {
          return c.machine == machine && device_of(c) == name;
        };
        if (std::none_of(lab_.cards.begin(), lab_.cards.end(), joins))
          space.batch += "link set " + name + " arp off\n";
      }
}

namespace {

// As MODEL says of segments and of LANs over the air.
bool stops_other_macs(const Lab& lab, const Segment& s) {
  const Lan* lan = s.type == SegmentKind::bridged ? find<Lan>(lab, s.lan) : nullptr;
  return s.passes_other_macs == Known::no || (lan && lan->medium == Medium::wireless);
}

} // namespace

void KernelNet::add_card(const Card& c) {
  Space& own = spaces_.at(c.machine);
  const Machine& m = *find<Machine>(lab_, c.machine);
  const std::string name = "c" + number(c.id), plug = "p" + number(c.id), mac = to_text(*c.mac);
  const Segment& segment = *find<Segment>(lab_, c.segment);
  const std::string mtu = std::to_string(c.mtu.value_or(segment.mtu));
  const auto at = [](const Space& s) {
    return "/proc/" + std::to_string(getpid()) + "/fd/" + std::to_string(s.net);
  };
  Space& carrier = space_of(m.carrier);
  // Made where they belong: moving them takes the kernel longer than all the rest.
  wires_.batch += "link add " + plug + " mtu " + std::to_string(segment.mtu) + " netns " + at(carrier) +
                  " type veth peer name " + name + " address " + mac + " mtu " + mtu + " netns " + at(own) +
                  "\n";
  if (c.connected) {
    own.awaited.push_back(name);
    own.awaited.push_back(device_of(c));
    carrier.awaited.push_back(plug);
    if (m.carrier) carrier.awaited.push_back(bridge_in(m.carrier, c.segment));
    carrier.batch += "link set " + plug + " master " + bridge_in(m.carrier, c.segment) + "\n";
    carrier.batch += "link set " + plug + " up\n";
    if (c.separated) carrier.batch += "link set " + plug + " type bridge_slave isolated on\n";
    const bool uplink = device_of(c) != name;
    if (c.own_mac_only || (uplink && stops_other_macs(lab_, segment)))
      carrier.translate += "add table bridge t\nadd chain bridge t p { type filter hook prerouting priority "
                           "0; }\nadd rule bridge t p iifname " +
                           plug + " ether saddr != " + mac + " drop\n";
  }
  own.batch += "link set " + name + " up\n";
  const std::string device = device_of(c);
  if (device != name) {
    own.batch += "link set " + name + " master " + device + "\n";
    own.batch += "link set " + device + " address " + mac + " mtu " + mtu + "\n";
  }
  own.devices.push_back(device);
  if (c.translates) masquerade(own, device);
}

void KernelNet::add_addresses(const Card& c, const std::string& device) {
  for (const CardAddress& a : c.addresses)
    if (a.address)
      spaces_.at(c.machine).batch += "addr add " + to_text(*a.address) + "/" + std::to_string(*a.length) +
                                     " dev " + device + (a.address->is_v4() ? "\n" : " nodad\n");
}

void KernelNet::add_routes(const Machine& m, bool on_link) {
  for (const Route& r : m.routes) {
    if (on_link != !r.via.has_value()) continue;
    std::string line = std::string(r.to.is_v4() ? "-4" : "-6") + " route add " + to_text(r.to);
    if (r.via) line += " via " + to_text(*r.via);
    if (r.card) line += " dev " + device_of(*find<Card>(lab_, r.card));
    if (r.metric != 0) line += " metric " + std::to_string(r.metric);
    if (r.on_link) line += " onlink";
    spaces_.at(m.id).batch += line.substr(3) + "\n";
  }
}

// Forwarding and filters first: they reset what hangs on them.
void KernelNet::settle(const Machine& m) {
  Space& s = spaces_.at(m.id);
  enter(s);
  constexpr const char* kFilters[3] = {"0", "2", "1"};
  bool forwards6 = false;
  for (const Card& c : lab_.cards) {
    if (c.machine != m.id) continue;
    const std::string conf = "ipv4/conf/" + device_of(c) + "/";
    set(s, conf + "forwarding", c.forwards4 ? "1" : "0");
    set(s, conf + "rp_filter", kFilters[static_cast<int>(m.reverse_filter)]);
    forwards6 |= c.forwards6;
  }
  set(s, "ipv6/conf/all/forwarding", forwards6 ? "1" : "0");
  // Card by card, as a system brings them up: of two equal routes the first one counts.
  for (const Card& c : lab_.cards) {
    if (c.machine != m.id) continue;
    add_addresses(c, device_of(c));
    add_given(m.id, c.id, device_of(c));
  }
  add_routes(m, true);
  add_routes(m, false);
  for (const Given& g : given_)
    if (g.system == m.id && g.gateway) s.batch += "route add default via " + to_text(*g.gateway) + "\n";
  run_in(s.net, {"ip", "-force", "-batch", "-", nullptr}, s.batch);
}

} // namespace snug::test
