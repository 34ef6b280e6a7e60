#include "tests/support/network_lab_maker.h"

#include <algorithm>

namespace snug::test {

// What people do wrong.

void NetworkMaker::spoil_addresses() {
  for (std::size_t i = r_.below(4); i > 0; --i) {
    Card& c = any_card();
    if (c.addresses.empty()) continue;
    CardAddress& a = c.addresses[r_.below(c.addresses.size())];
    if (!a.address) continue;
    switch (r_.below(4)) {
    case 0:
      a.length = a.address->is_v4() ? static_cast<std::int32_t>(r_.between(8, 32))
                                    : static_cast<std::int32_t>(r_.between(24, 128));
      break;
    case 1: { // an address that somebody has already
      const Card& d = any_card();
      if (!d.addresses.empty() && d.addresses.front().address) a.address = d.addresses.front().address;
      a.length = a.address->is_v4() ? 24 : 64;
      break;
    }
    case 2: { // a second network on the card
      CardAddress extra = a;
      const std::size_t s = r_.below(lab_.segments.size());
      extra.address = v4(net(s), 100 + static_cast<int>(r_.below(100)));
      extra.length = 24;
      c.addresses.push_back(extra);
      break;
    }
    default:
      c.addresses.clear();
    }
  }
}

void NetworkMaker::spoil_cards() {
  constexpr std::int32_t kSizes[5] = {1280, 1400, 1500, 9000, 1000};
  for (std::size_t i = r_.below(5); i > 0; --i) {
    Card& c = any_card();
    switch (r_.below(6)) {
    case 0:
      c.connected = false;
      break;
    case 1:
      c.carries.clear();
      break;
    case 2:
      c.mtu = kSizes[r_.below(5)];
      break;
    case 3:
      c.separated = true;
      break;
    case 4:
      c.forwards4 = !c.forwards4;
      break;
    default:
      lab_.segments[r_.below(lab_.segments.size())].mtu = kSizes[r_.below(4)];
    }
  }
}

void NetworkMaker::spoil_machines() {
  Exercise& e = add(Exercise{});
  for (const Machine& m : lab_.machines)
    if (!r_.chance(4)) e.on.push_back(m.id);
  for (std::size_t i = r_.below(4); i > 0; --i) {
    Machine& m = any_machine();
    switch (r_.below(4)) {
    case 0:
      m.reverse_filter = r_.chance(50) ? ReverseFilter::strict : ReverseFilter::loose;
      break;
    case 1:
      if (!m.routes.empty())
        m.routes.erase(m.routes.begin() + static_cast<std::ptrdiff_t>(r_.below(m.routes.size())));
      break;
    case 2: { // on link, or by a next hop that is no neighbour
      Route& r = m.routes.emplace_back();
      const std::size_t s = r_.below(lab_.segments.size());
      r.to = Prefix::of(v4(net(s), 0), 24);
      for (const Card& c : lab_.cards)
        if (c.machine == m.id) r.card = c.id;
      if (r_.chance(50)) r.via = v4(r_.below(lab_.segments.size()), 1);
      r.on_link = r.via && r_.chance(50);
      if (!r.card) m.routes.pop_back();
      break;
    }
    default:
      for (Card& c : lab_.cards)
        if (c.machine == m.id) c.forwards4 = c.forwards6 = true;
    }
  }
}

} // namespace snug::test
