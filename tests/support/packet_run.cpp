#include "tests/support/packet_run.h"

#include <algorithm>

namespace snug::test {

using sim::HostCard, sim::HostRoute, sim::HostView, sim::Is, sim::kEverybody, sim::kNone;

// Layer 3: what a system does with a packet.

namespace {

constexpr int kTries = 8;         // with what was learned of sizes
constexpr int kMostEvents = 4000; // a storm
constexpr int kAny = 1 << 30;

} // namespace

Reached PacketSim::Run::play() {
  w_.wires.forget();
  from_ = w_.host_of(q_.from);
  to_ = w_.host_of(q_.to);
  const int small = q_.size != 0 ? q_.size : q_.target->is_v4() ? 84 : 104;
  return q_.full_size ? transfer() : exchange(small, q_.keep_whole);
}

// Again when the sender or who answers was told of a smaller size and may cut (RFC 8201).
Reached PacketSim::Run::exchange(int size, bool whole) {
  Reached r = Reached::does_not_reach;
  for (int i = 0; i < kTries; ++i) {
    arrived_ = answered_ = told_ = false;
    flows_.clear();
    waiting_.clear();
    if (w_.hosts[from_].on) {
      Packet p;
      p.transport = q_.transport;
      p.to = *q_.target;
      p.size = p.whole_size = size;
      p.left = q_.hop_limit;
      p.whole = whole;
      unsigned by = kNone;
      for (unsigned c = w_.hosts[from_].first_card; q_.by && c < w_.hosts[from_].end_card; ++c)
        if (w_.cards[c].id == AnyId(q_.by)) by = c;
      send(from_, p, by);
      settle();
    }
    r = answered_ ? Reached::reaches : arrived_ ? Reached::one_way : Reached::does_not_reach;
    if (r == Reached::reaches || !told_ || whole) return r;
  }
  return r;
}

// A small one first. TCP takes the smaller of both ends' sizes and goes on with what routers tell (RFC 1191).
Reached PacketSim::Run::transfer() {
  const Reached small = exchange(q_.target->is_v4() ? 84 : 104, false);
  if (small != Reached::reaches || first_mtu_ == 0) return small;
  if (q_.transport != Transport::tcp) return exchange(first_mtu_, false);
  int size = last_mtu_ == 0 ? first_mtu_ : std::min(first_mtu_, last_mtu_);
  for (int i = 0; i < kTries; ++i) {
    const Reached r = exchange(size, true);
    if (r == Reached::reaches) return r;
    if (arrived_) return small; // the long ones arrive, and acknowledgements are short
    const int room = path(from_, *q_.target);
    if (!told_ || room >= size) return Reached::does_not_reach;
    size = room;
  }
  return Reached::does_not_reach;
}

void PacketSim::Run::settle() {
  for (int n = 0; !events_.empty() && n < kMostEvents; ++n) {
    const Arrival a = events_.front();
    events_.pop_front();
    deliver(a.card, a.frame);
  }
  events_.clear();
}

int& PacketSim::Run::path(unsigned host, const Address& to) {
  for (auto& [key, room] : paths_)
    if (key == std::pair(host, to)) return room;
  return paths_.emplace_back(std::pair(host, to), kAny).second;
}

// IPv4 pieces are multiples of eight octets behind a header of 20, IPv6 ones behind 48.
void PacketSim::Run::cut(Packet& p, int room) {
  const int header = p.to.is_v4() ? 20 : 48;
  p.size = (room - header) / 8 * 8 + header;
}

void PacketSim::Run::send(unsigned host, Packet p, unsigned by, unsigned near) {
  HostView v = w_.view(host);
  if (v.owns(p.to)) {
    if (!p.from) p.from = p.to;
    return accept(host, kNone, p);
  }
  const bool odd = is_multicast(p.to) || is_loopback(p.to) || p.to == Address() || p.to == Address::v4(~0U);
  if (odd || (p.from && is_loopback(*p.from))) return;
  if (p.to.is_v4() && v.type4(p.to) == Is::broadcast) return broadcast(host, p);
  const HostRoute* r = v.route(p.to, by, near);
  if (!r) return;
  const HostCard& card = w_.cards[r->card];
  const Address hop = r->via.value_or(p.to);
  if (!p.from)
    p.from = !p.to.is_v4() ? v.source6(r->card, p.to) : r->source ? r->source : v.source4(r->card, hop);
  if (!p.from || is_loopback(*p.from)) return;
  if (p.what == Packet::What::request) first_mtu_ = card.mtu;
  if (p.what == Packet::What::reply) last_mtu_ = card.mtu;
  const int room = std::min(card.mtu, path(host, p.to));
  if (p.size > room && p.whole) {
    if (host == from_) told_ = true, path(host, p.to) = room;
    return;
  }
  if (p.size > room) cut(p, room);
  if (translate(host, r->card, hop, p)) resolve(r->card, hop, p);
}

// Only answers may go to everybody.
void PacketSim::Run::broadcast(unsigned host, Packet& p) {
  if (p.what != Packet::What::reply || p.transport == Transport::tcp) return;
  unsigned card = kNone;
  w_.view(host).type4(p.to, kNone, &card);
  put(card, kEverybody, p);
}

void PacketSim::Run::receive(unsigned card, const Frame& f) {
  Packet p = f.packet;
  const HostCard& c = w_.cards[card];
  HostView v = w_.view(c.host);
  if (p.to.is_v4()) {
    restore(c.host, p);
    if (is_loopback(*p.from) || !v.source_ok(card, *p.from)) return;
    const Is type = v.type4(p.to);
    if (type == Is::own) return accept(c.host, card, p);
    if (type == Is::broadcast) return;
  } else {
    const bool mine = is_link_local(p.to) ? c.has_v6() && c.link_local() == p.to : v.owns(p.to);
    const auto& own = c.addresses;
    const bool typed =
        std::any_of(own.begin(), own.end(), [&](const sim::Held& h) { return h.address == p.to; });
    if (mine || typed) return accept(c.host, card, p);
  }
  if (f.to != kEverybody) forward(card, p);
}

void PacketSim::Run::accept(unsigned host, unsigned card, const Packet& p) {
  if (p.what == Packet::What::too_long) {
    if (p.room < path(host, p.lost_to)) {
      path(host, p.lost_to) = p.room;
      told_ = true;
    }
  } else if (p.what == Packet::What::reply) {
    const bool known = p.transport == Transport::icmp || *p.from == *q_.target;
    if (host == from_ && p.by == to_ && known) answered_ = true;
  } else {
    if (host == to_) arrived_ = true;
    if (translates(host)) note({host, *p.from, p.to, *p.from});
    Packet back = p;
    back.what = Packet::What::reply;
    back.from = p.to;
    back.to = *p.from;
    back.left = 64;
    back.whole = false;
    back.by = host;
    back.size = back.whole_size = p.transport == Transport::tcp && p.whole_size > 104 ? 60 : p.whole_size;
    const bool v6 = !back.to.is_v4();
    send(host, back, v6 && is_link_local(back.to) ? card : kNone,
         v6 && p.transport == Transport::icmp ? card : kNone);
  }
}

// RFC 1812 5.2, RFC 8200 and 4291 2.5.6.
void PacketSim::Run::forward(unsigned card, Packet p) {
  const HostCard& in = w_.cards[card];
  const bool v4 = p.to.is_v4();
  if (!(v4 ? in.forwards4 : in.forwards6) || p.left <= 1) return;
  if (!v4 && (is_link_local(p.to) || is_link_local(*p.from))) return;
  --p.left;
  const HostRoute* r = w_.view(in.host).route(p.to);
  if (!r) return;
  const int room = w_.cards[r->card].mtu;
  if (p.size > room) {
    if (p.whole || !v4) return refuse_size(in.host, p, room);
    cut(p, room);
  }
  const Address hop = r->via.value_or(p.to);
  if (translate(in.host, r->card, hop, p)) resolve(r->card, hop, p);
}

// RFC 792, RFC 4443 3.2.
void PacketSim::Run::refuse_size(unsigned host, const Packet& lost, int room) {
  if (lost.what == Packet::What::too_long) return;
  Packet p;
  p.what = Packet::What::too_long;
  p.to = *lost.from;
  p.lost_to = lost.to;
  p.room = room;
  send(host, p, kNone);
}

// What comes back to the address that a flow got on its way out.
void PacketSim::Run::restore(unsigned host, Packet& p) {
  if (p.what == Packet::What::request) return;
  for (const Flow& f : flows_) {
    const Address& other = p.what == Packet::What::too_long ? p.lost_to : *p.from;
    if (f.host != host || f.as != p.to || f.to != other) continue;
    p.to = f.from;
    return;
  }
}

bool PacketSim::Run::translates(unsigned host) const {
  const sim::Host& h = w_.hosts[host];
  const auto first = w_.cards.begin() + h.first_card, end = w_.cards.begin() + h.end_card;
  return std::any_of(first, end, [](const HostCard& c) { return c.masquerades; });
}

void PacketSim::Run::note(const Flow& f) {
  for (const Flow& o : flows_)
    if (o.host == f.host && o.from == f.from && o.to == f.to) return;
  flows_.push_back(f);
}

// A system that translates knows each flow since its first packet. Replies of flows that it does not know
// are no beginning of one (RFC 6146 3.5 for TCP and ICMP); UDP looks like one.
bool PacketSim::Run::translate(unsigned host, unsigned card, const Address& hop, Packet& p) {
  if (!p.to.is_v4() || p.what == Packet::What::too_long || !translates(host)) return true;
  const bool reply = p.what == Packet::What::reply;
  for (const Flow& f : flows_) {
    if (f.host != host) continue;
    if (reply && f.from == p.to && f.to == p.from) return true;
    if (reply || f.from != p.from || f.to != p.to) continue;
    p.from = f.as;
    return true;
  }
  if (reply && p.transport != Transport::udp) return true;
  Address as = *p.from;
  if (w_.cards[card].masquerades) {
    const auto own = w_.view(host).source4(card, hop);
    if (!own) return false;
    as = *own;
  }
  note({host, *p.from, p.to, as});
  p.from = as;
  return true;
}

} // namespace snug::test
