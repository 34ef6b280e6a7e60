#include "tests/support/packet_run.h"

#include <algorithm>

namespace snug::test {

using sim::HostCard, sim::HostView, sim::Is, sim::kEverybody;

// Layer 2: questions for addresses (RFC 826, RFC 4861 7.2) and frames.

void PacketSim::Run::transmit(unsigned card, const Frame& f) {
  std::vector<unsigned> arrivals;
  w_.wires.send(card, f, arrivals);
  // Who answers a question first is chance.
  if (f.what == Frame::What::question) {
    std::vector<unsigned> answering;
    for (const unsigned c : arrivals)
      if (would_answer(c, f)) answering.push_back(c);
    if (!answering.empty()) {
      const unsigned first = answering[chance_.choose(answering.size())];
      const auto at = std::find(arrivals.begin(), arrivals.end(), first);
      std::rotate(arrivals.begin(), at, at + 1);
    }
  }
  for (const unsigned c : arrivals) events_.push_back({c, f});
}

const std::uint64_t* PacketSim::Run::known(unsigned card, const Address& a) const {
  for (const Neighbour& n : neighbours_)
    if (n.card == card && n.address == a) return &n.mac;
  return nullptr;
}

void PacketSim::Run::learn(unsigned card, const Address& a, std::uint64_t mac) {
  for (Neighbour& n : neighbours_)
    if (n.card == card && n.address == a) {
      n.mac = mac;
      return;
    }
  neighbours_.push_back({card, a, mac});
}

void PacketSim::Run::put(unsigned card, std::uint64_t mac, const Packet& p) {
  Frame f;
  f.from = w_.cards[card].mac;
  f.to = mac;
  f.packet = p;
  transmit(card, f);
}

// Asks with the packet's source where it is the system's own (IPv6: the card's).
void PacketSim::Run::resolve(unsigned card, const Address& hop, const Packet& p) {
  if (const std::uint64_t* mac = known(card, hop)) return put(card, *mac, p);
  const bool asked = std::any_of(waiting_.begin(), waiting_.end(),
                                 [&](const Waiting& w) { return w.card == card && w.hop == hop; });
  waiting_.push_back({card, hop, p});
  if (asked) return;
  const HostCard& c = w_.cards[card];
  HostView v = w_.view(c.host);
  std::optional<Address> asker = p.from;
  if (hop.is_v4()) {
    if (!v.owns(*asker)) asker = v.source4(card, hop);
  } else if (std::none_of(c.addresses.begin(), c.addresses.end(),
                          [&](const sim::Held& h) { return h.address == *asker; })) {
    asker = c.link_local();
  }
  Frame f;
  f.what = Frame::What::question;
  f.from = c.mac;
  f.asker = asker.value_or(Address());
  f.asked = hop;
  transmit(card, f);
}

// IPv4: for any address of the system, by any card, if the asker may send there. IPv6: for the card's own.
bool PacketSim::Run::would_answer(unsigned card, const Frame& f) {
  const HostCard& c = w_.cards[card];
  HostView v = w_.view(c.host);
  if (f.asked.is_v4()) return v.type4(f.asked) == Is::own && v.source_ok(card, f.asker);
  if (c.has_v6() && c.link_local() == f.asked) return true;
  return std::any_of(c.addresses.begin(), c.addresses.end(),
                     [&](const sim::Held& h) { return h.address == f.asked; });
}

void PacketSim::Run::hear_question(unsigned card, const Frame& f) {
  if (!would_answer(card, f)) return;
  learn(card, f.asker, f.from);
  Frame answer;
  answer.what = Frame::What::answer;
  answer.from = w_.cards[card].mac;
  answer.to = f.from;
  answer.asker = f.asker;
  answer.asked = f.asked;
  transmit(card, answer);
}

void PacketSim::Run::deliver(unsigned card, const Frame& f) {
  if (f.to != kEverybody && f.to != w_.cards[card].mac) return;
  if (f.what == Frame::What::question) return hear_question(card, f);
  if (f.what == Frame::What::packet) return receive(card, f);
  // The first answer counts.
  std::vector<Waiting> now;
  for (const Waiting& w : waiting_)
    if (w.card == card && w.hop == f.asked) now.push_back(w);
  if (now.empty()) return;
  std::erase_if(waiting_, [&](const Waiting& w) { return w.card == card && w.hop == f.asked; });
  learn(card, f.asked, f.from);
  for (const Waiting& w : now) put(card, f.from, w.packet);
}

} // namespace snug::test
