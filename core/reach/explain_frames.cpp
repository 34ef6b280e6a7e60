#include "core/model/store.h"
#include "core/reach/explainer.h"
#include "core/text/reach_text.h"

namespace snug {

// A guest whose hypervisor carries its segment no further.
std::optional<Message> Explainer::island(std::uint32_t port) const {
  if (port == kNowhere || n_.ports()[port].piece == kNowhere) return std::nullopt;
  const ReachPort& p = n_.ports()[port];
  const ReachPiece& top = n_.pieces()[n_.pieces()[p.piece].root];
  const std::uint32_t place = index_.place(n_.nodes()[p.node].id);
  if (top.segment == kNowhere || place == kNowhere || n_.nodes()[p.node].id.kind != Kind::machine)
    return std::nullopt;
  if (const Card* up = index_.card(top.up); up && !up->connected)
    return say(text::reach_uplink_cut, name_of(index_.lab(), up->id), segment(port), name(up->machine));
  std::uint32_t carrier = p.inside ? place : index_.carrier_of(place);
  for (std::uint32_t at = p.piece; n_.pieces()[at].parent != kNowhere && carrier != kNowhere;
       at = n_.pieces()[at].parent)
    carrier = index_.carrier_of(carrier);
  if (carrier == kNowhere) return std::nullopt;
  return say(text::reach_island, name(n_.nodes()[p.node].id), name(index_.lab().machines[carrier].id),
             segment(port));
}

// One end has a card out of a segment in which the other end is.
std::optional<Message> Explainer::cut() const {
  const std::uint32_t from = n_.node_of(q_.from), to = n_.node_of(q_.to);
  if (from == kNowhere || to == kNowhere) return std::nullopt;
  for (const auto& [one, other] : {std::pair(from, to), std::pair(to, from)})
    for (std::uint32_t p = n_.nodes()[one].first_port; p < n_.nodes()[one].end_port; ++p) {
      const ReachPort& port = n_.ports()[p];
      const Card* card = port.id.kind == Kind::card ? index_.card(CardId{port.id.number}) : nullptr;
      if (!card || card->connected || port.segment == kNowhere) continue;
      const std::string its_name = name_of(index_.lab(), port.id);
      for (std::uint32_t q = n_.nodes()[other].first_port; q < n_.nodes()[other].end_port; ++q) {
        if (n_.ports()[q].segment != port.segment || n_.same_network(p, q)) continue;
        return port.inside ? say(text::reach_uplink_cut, its_name, segment(p), name(card->machine))
                           : say(text::reach_cut, its_name, segment(p), here());
      }
    }
  return std::nullopt;
}

Message Explainer::unheard() const { return say(text::reach_unheard, here(), partner(), segment(port())); }

// The switch on the way up from `from` that only its hypervisor's own MAC leaves; kNowhere.
std::uint32_t Explainer::stopping_piece(std::uint32_t from, std::uint32_t to) const {
  const auto pieces = n_.pieces();
  const auto leads_to = [&](std::uint32_t piece) {
    std::uint32_t at = n_.ports()[to].piece;
    while (at != kNowhere && at != piece) at = pieces[at].parent;
    return at == piece;
  };
  for (std::uint32_t at = n_.ports()[from].piece; at != kNowhere && !leads_to(at); at = pieces[at].parent)
    if (pieces[at].up_own_mac_only && pieces[at].up_mac != n_.ports()[from].mac) return at;
  return kNowhere;
}

// A wireless LAN first: no setting helps there.
Message Explainer::own_macs(std::uint32_t from, std::uint32_t to) const {
  std::uint32_t at = stopping_piece(from, to), sender = from;
  if (at == kNowhere) at = stopping_piece(to, from), sender = to;
  const Card* up = at == kNowhere ? nullptr : index_.card(n_.pieces()[at].up);
  if (!up) return say(text::reach_unheard, name_at(from), name_at(to), segment(from));
  const Segment& s = index_.lab().segments[n_.pieces()[at].segment];
  const Lan* lan = s.type == SegmentKind::bridged ? index_.lan(s.lan) : nullptr;
  const std::string carrier = name(up->machine), guest = name_at(sender);
  if (lan && lan->medium == Medium::wireless)
    return say(text::reach_wireless, name_of(index_.lab(), lan->id), carrier, guest);
  if (s.passes_other_macs == Known::no)
    return say(text::reach_segment_macs, name_of(index_.lab(), s.id), carrier, guest);
  return say(text::reach_other_macs, name_of(index_.lab(), up->id), guest, carrier);
}

Message Explainer::other_macs() const {
  const std::uint32_t at = port();
  const ReachAddress* h = holder();
  if (h && at != kNowhere)
    for (std::uint32_t q = n_.nodes()[n_.ports()[h->port].node].first_port;
         q < n_.nodes()[n_.ports()[h->port].node].end_port; ++q)
      if (n_.same_network(at, q) && (stopping_piece(at, q) != kNowhere || stopping_piece(q, at) != kNowhere))
        return own_macs(at, q);
  return unheard();
}

} // namespace snug
