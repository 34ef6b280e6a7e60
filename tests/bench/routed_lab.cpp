#include "tests/bench/routed_lab.h"

#include "core/net/mac.h"

#include <algorithm>
#include <string>

namespace snug::bench {

namespace {

// Segment i of district d: 10.d.i.0/24; its router to the one above has .1 there. i = 0 is the district's own
// segment, below the top of its tree, 172.16.t.0/24, where the district's router has .d.
class Maker {
 public:
  explicit Maker(std::size_t machines) : machines_(machines) {
    const std::size_t segments = std::max<std::size_t>(machines / 11, 8);
    districts_ = std::max<std::size_t>(segments / 36, 4);
    leaves_ = segments / districts_ - 1;
    lab_.facts.uid = "00112233445566778899aabbccddeeff";
    lab_.facts.title = "Routed lab";
    lab_.pc.installed = 64LL * 1024 * 1024;
  }
  Lab make() {
    for (std::uint32_t t = 0; t < 2; ++t) tops_.push_back(segment(0xac10'0000U | t << 8U));
    for (std::uint32_t d = 0; d < districts_; ++d)
      for (std::uint32_t i = 0; i <= leaves_; ++i)
        segments_.push_back(segment(0x0a00'0000U | (d + 1) << 16U | i << 8U));
    for (std::uint32_t d = 0; d < districts_; ++d) district(d);
    spares();
    hosts();
    return std::move(lab_);
  }

 private:
  std::uint32_t next() { return lab_.facts.next_id++; }
  // 85 of 100 districts belong to the first tree.
  std::uint32_t tree(std::uint32_t d) const { return d * 100 < districts_ * 85 ? 0 : 1; }
  std::uint32_t leaf(std::uint32_t d, std::uint32_t i) const {
    return d * (static_cast<std::uint32_t>(leaves_) + 1) + i;
  }
  Address in(std::uint32_t place, std::uint32_t host) const {
    return *lab_.segments[place].prefix4->network().plus(host);
  }

  std::uint32_t segment(std::uint32_t network) {
    Segment s;
    s.id.number = next();
    s.name = "net-" + std::to_string(lab_.segments.size());
    s.prefix4 = Prefix::of(Address::v4(network), 24);
    s.passes_other_macs = Known::yes;
    lab_.segments.push_back(s);
    return static_cast<std::uint32_t>(lab_.segments.size() - 1);
  }
  Machine& machine(const std::string& name) {
    Machine m;
    m.id.number = next();
    m.name = name + "-" + std::to_string(lab_.machines.size());
    m.memory = 1024;
    return lab_.machines.emplace_back(std::move(m));
  }
  void card(MachineId m, std::uint32_t segment, std::uint32_t host, bool forwards) {
    Card c;
    c.id.number = next();
    c.machine = m;
    c.segment = lab_.segments[segment].id;
    c.addresses.push_back({{}, AddressKind::typed, in(segment, host), std::nullopt});
    c.mac = Mac(0x0200'0000'0000ULL | c.id.number);
    c.forwards4 = forwards;
    lab_.cards.push_back(std::move(c));
  }
  static Route route(const Prefix& to, const Address& via) {
    Route r;
    r.to = to;
    r.via = via;
    return r;
  }
  void district(std::uint32_t d) {
    const std::uint32_t top = tops_[tree(d)], own = segments_[leaf(d, 0)];
    Machine& router = machine("district");
    for (std::uint32_t other = 0; other < districts_; ++other)
      if (other != d && tree(other) == tree(d))
        router.routes.push_back(
            route(Prefix::of(Address::v4(0x0a00'0000U | (other + 1) << 16U), 16), in(top, other + 10)));
    for (std::uint32_t i = 1; i <= leaves_; ++i)
      router.routes.push_back(route(*lab_.segments[segments_[leaf(d, i)]].prefix4, in(own, i + 1)));
    card(router.id, top, d + 10, true);
    card(router.id, own, 1, true);
    for (std::uint32_t i = 1; i <= leaves_; ++i) {
      Machine& below = machine("router");
      below.routes.push_back(route({}, in(own, 1)));
      const bool forwards = i % 10 != 0;
      card(below.id, own, i + 1, forwards);
      card(below.id, segments_[leaf(d, i)], 1, forwards);
    }
  }
  // More routers beside those in use, until every eighth machine is one; not where none forwards.
  void spares() {
    const auto districts = static_cast<std::uint32_t>(districts_);
    const auto leaves = static_cast<std::uint32_t>(std::min<std::size_t>(leaves_, 9));
    for (std::uint32_t n = 0; lab_.machines.size() < machines_ / 8; ++n) {
      const std::uint32_t d = n % districts, i = 1 + n / districts % leaves;
      Machine& m = machine("spare");
      m.routes.push_back(route({}, in(segments_[leaf(d, 0)], 1)));
      card(m.id, segments_[leaf(d, 0)], 100 + n / districts, true);
      card(m.id, segments_[leaf(d, i)], 2 + n / districts / leaves, true);
    }
  }
  void hosts() {
    const auto all = static_cast<std::uint32_t>(lab_.segments.size());
    for (std::uint32_t n = 0; lab_.machines.size() < machines_; ++n) {
      const std::uint32_t s = n % all;
      Machine& m = machine("host");
      const bool on_top = s < tops_.size();
      const std::uint32_t first = tree(0) == s ? 0 : static_cast<std::uint32_t>(districts_ - 1);
      m.routes.push_back(route({}, in(s, on_top ? first + 10 : 1)));
      card(m.id, s, 150 + n / all, false);
    }
  }

  std::size_t machines_, districts_ = 0, leaves_ = 0;
  Lab lab_{};
  std::vector<std::uint32_t> tops_, segments_;
};

} // namespace

Lab routed_lab(std::size_t machines) { return Maker(machines).make(); }

} // namespace snug::bench
