#include "tests/bench/bench_lab.h"

namespace snug::bench {

namespace {

struct Maker {
  Lab lab{};
  DiskId carrier_disk; // of the last hypervisor
  std::uint32_t next() { return lab.facts.next_id++; }

  void begin() {
    lab.facts.uid = "00112233445566778899aabbccddeeff";
    lab.facts.title = "Measured lab";
    lab.pc.installed = 32LL * 1024 * 1024;
    lab.pc.cores = 4096;
    lab.pc.threads = 8192;
    for (Known* k : {&lab.pc.is_64_bit, &lab.pc.firmware_virtualization, &lab.pc.second_level_translation,
                     &lab.pc.nested_virtualization, &lab.pc.resolves_lab_names})
      *k = Known::yes;
    lab.pc.virtualization_occupied = Known::no;
    Volume v;
    v.id.number = next();
    v.name = "volume";
    v.type = VolumeKind::nvme;
    v.size = v.free = 60LL * 1024 * 1024;
    lab.volumes.push_back(v);
    for (const bool hypervisor : {false, true}) {
      Role r;
      r.id.number = next();
      r.key = hypervisor ? "nested-hypervisor" : "application";
      r.title = hypervisor ? "Hypervisor (nested)" : "Application";
      r.is_hypervisor = hypervisor;
      r.current_footprint = r.lean_footprint = hypervisor ? 2048 : 0;
      lab.roles.push_back(r);
    }
  }

  const Segment& segment(std::uint32_t n) {
    Segment s;
    s.id.number = next();
    s.name = "net-" + std::to_string(n);
    s.prefix4 = Prefix::of(Address::v4(0x0a00'0000U | (n << 8U)), 24);
    s.prefix6 = Prefix::of(Address::v6(0xfd12'3456'0000'0000ULL | n, 0), 64);
    s.passes_other_macs = Known::yes;
    return lab.segments.emplace_back(std::move(s));
  }

  Machine& machine(const std::string& name, bool hypervisor, MachineId carrier) {
    Machine m;
    m.id.number = next();
    m.name = name;
    m.role = lab.roles[hypervisor ? 1 : 0].id;
    m.carrier = carrier;
    m.memory = hypervisor ? 24576 : 2048;
    m.processors = hypervisor ? 8 : 2;
    m.expose_virtualization = hypervisor;
    m.expected_percent = hypervisor ? 100 : 70;
    Disk d;
    d.id.number = next();
    d.machine = m.id;
    d.size = hypervisor ? 65536 : 4096;
    d.store = carrier ? AnyId(carrier_disk) : AnyId(lab.volumes.front().id);
    if (hypervisor) carrier_disk = d.id;
    lab.disks.push_back(d);
    return lab.machines.emplace_back(std::move(m));
  }

  // Every fiftieth card repeats a host number of its segment.
  void card(MachineId m, const Segment& s, std::uint32_t host, bool carries) {
    if (lab.cards.size() % 50 == 49) host -= 2;
    Card c;
    c.id.number = next();
    c.machine = m;
    c.segment = s.id;
    c.addresses.push_back({{}, AddressKind::typed, s.prefix4->network().plus(host), std::nullopt});
    c.addresses.push_back({{}, AddressKind::typed, s.prefix6->network().plus(host), std::nullopt});
    if (carries) c.carries.push_back({{}, s.id, 0});
    c.mac = Mac(0x0200'0000'0000ULL | c.id.number);
    c.mac_source = MacSource::derived;
    c.for_management = true;
    lab.cards.push_back(std::move(c));
  }
};

} // namespace

Lab guest_lab(std::size_t guests) {
  Maker make;
  make.begin();
  const auto blocks = static_cast<std::uint32_t>((guests + 9) / 10);
  for (std::uint32_t b = 0; b < blocks; ++b) make.segment(b);
  for (std::uint32_t b = 0; b < blocks; ++b) {
    const std::array<const Segment*, 2> nets{&make.lab.segments[b], &make.lab.segments[(b + 1) % blocks]};
    MachineId hypervisor;
    for (std::uint32_t i = 0; i < 10 && make.lab.machines.size() < guests; ++i) {
      const MachineId m =
          make.machine("host-" + std::to_string(b) + "-" + std::to_string(i), i == 0, hypervisor).id;
      if (i == 0) hypervisor = m;
      make.card(m, *nets[0], 20 + 2 * i, i == 0);
      make.card(m, *nets[1], 120 + 2 * i, i == 0);
    }
  }
  for (std::size_t e = 0; e < 4; ++e) {
    Exercise exercise;
    exercise.id.number = make.next();
    exercise.name = "exercise " + std::to_string(e + 1);
    for (std::size_t i = 0; i < make.lab.machines.size(); ++i)
      if (i / 10 % 4 <= e) exercise.on.push_back(make.lab.machines[i].id);
    make.lab.exercises.push_back(std::move(exercise));
  }
  return std::move(make.lab);
}

Lab needing_lab(std::size_t guests) {
  Lab lab = guest_lab(guests);
  for (const char* service : {"names", "time"}) {
    Need need;
    need.service = service;
    lab.roles.front().needs.push_back(need);
    Offer offer;
    offer.service = service;
    offer.transport = Transport::udp;
    offer.port = service[0] == 'n' ? 53 : 123;
    for (std::size_t m = 1; m < lab.machines.size(); m += 10) lab.machines[m].offers.push_back(offer);
  }
  return lab;
}

Lab promising_lab(std::size_t guests) {
  Lab lab = needing_lab(guests);
  for (std::uint32_t i = 0; i < 20; ++i) {
    Promise& p = lab.promises.emplace_back();
    p.id = PromiseId{lab.facts.next_id++};
    p.from = lab.machines[i * 7 % lab.machines.size()].id;
    p.to = lab.machines[(i * 13 + guests / 2) % lab.machines.size()].id;
    p.must = i % 3 == 0 ? PromiseKind::never : PromiseKind::reach;
  }
  return lab;
}

Lab range_lab(std::size_t ranges) {
  Maker make;
  make.begin();
  const std::size_t segments = ranges / 20;
  for (std::uint32_t s = 0; s < segments; ++s) make.segment(s);
  for (std::size_t i = 0; i < ranges - 2 * segments; ++i) {
    const Segment& s = make.lab.segments[i % segments];
    const auto host = static_cast<std::uint32_t>(10 + 2 * (i / segments));
    make.card(make.machine("host-" + std::to_string(i), false, {}).id, s, host, false);
    if (i >= segments) continue;
    Card& server = make.lab.cards.back();
    server.dhcp = DhcpDuty::server;
    // A fifth of the ranges begins too low: some cards stand in it.
    const std::uint32_t first = i % 5 == 0 ? 40 : 100;
    server.ranges.push_back({{}, *s.prefix4->network().plus(first), *s.prefix4->network().plus(150)});
  }
  return std::move(make.lab);
}

} // namespace snug::bench
