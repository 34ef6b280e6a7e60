#include "core/reach/askable.h"

#include "core/base/quote.h"
#include "core/model/store.h"
#include "core/reach/explain.h"
#include "core/text/reach_text.h"

#include <algorithm>
#include <charconv>
#include <map>

namespace snug {

namespace {

std::string folded(std::string_view s) {
  std::string out(s);
  std::transform(out.begin(), out.end(), out.begin(), lower);
  return out;
}

bool same_text(std::string_view a, std::string_view b) { return folded(a) == folded(b); }

std::vector<AskablePlace> machines_by_name(const Lab& lab) {
  std::vector<std::pair<std::string, AskablePlace>> machines;
  for (const Machine& m : lab.machines) {
    std::string name = m.name.empty() ? name_of(lab, m.id) : m.name;
    machines.emplace_back(folded(name), AskablePlace{m.id, name});
  }
  std::stable_sort(machines.begin(), machines.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<AskablePlace> out;
  for (auto& [key, place] : machines) out.push_back(std::move(place));
  return out;
}

} // namespace

std::vector<AskablePlace> askable_places(const Lab& lab) {
  const auto place = [&](AnyId id) { return AskablePlace{id, reach_name(lab, id)}; };
  std::vector<AskablePlace> out{place({Kind::pc, 0}), place({Kind::outside, 0})};
  for (AskablePlace& p : machines_by_name(lab)) out.push_back(std::move(p));
  for (const Lan& l : lab.lans) out.push_back(place(l.id));
  for (const Segment& s : lab.segments)
    if (s.type == SegmentKind::nat) out.push_back(place(s.id));
  std::map<std::string, int> seen;
  for (AskablePlace& p : out)
    if (const int n = ++seen[p.name]; n > 1) p.name += " (" + std::to_string(n) + ")";
  return out;
}

bool is_askable(const Lab& lab, AnyId id) {
  if (id.kind == Kind::pc || id.kind == Kind::outside) return true;
  if (id.kind == Kind::segment) {
    const Segment* s = find<Segment>(lab, SegmentId{id.number});
    return s && s->type == SegmentKind::nat;
  }
  return (id.kind == Kind::machine || id.kind == Kind::lan) && exists(lab, id);
}

std::vector<AskableAddress> askable_addresses(const Index& index, AnyId node) {
  const std::uint32_t machine = node.kind == Kind::machine ? index.place(node) : kNowhere;
  if (machine == kNowhere) return {};
  std::vector<AskableAddress> out;
  const Lab& lab = index.lab();
  for (const std::uint32_t place : index.cards_of(machine))
    for (const CardAddress& a : lab.cards[place].addresses) {
      if (!a.address || (!a.address->is_v4() && is_link_local(*a.address))) continue;
      const Segment* s = index.segment(lab.cards[place].segment);
      const std::string text = to_text(*a.address);
      out.push_back({*a.address, s ? english(say(text::ask_address_on, text, name_of(lab, s->id))) : text});
    }
  if (out.size() < 2) out.clear();
  return out;
}

namespace {

bool is_called(const Index& index, std::uint32_t card, std::size_t number, std::string_view text) {
  const Card& c = index.lab().cards[card];
  const Segment* s = index.segment(c.segment);
  return to_text(c.id) == text || (!c.name.empty() && same_text(c.name, text)) ||
         (s && same_text(s->name, text)) || std::to_string(number) == text ||
         same_text("card " + std::to_string(number), text);
}

} // namespace

Result<Address> address_on_card(const Index& index, const ReachNetwork& network, MachineId machine,
                                std::string_view card) {
  const std::string name = name_of(index.lab(), machine);
  const std::uint32_t node = network.node_of(machine);
  std::size_t number = 0;
  for (const std::uint32_t place : index.cards_of(index.place(machine))) {
    if (!is_called(index, place, ++number, trimmed(card))) continue;
    const ReachNode& n = network.nodes()[node];
    for (std::uint32_t p = n.first_port; p < n.end_port; ++p)
      if (network.ports()[p].id == AnyId(index.lab().cards[place].id))
        for (const ReachAddress& a : network.addresses(network.ports()[p])) return a.address;
    return fail(text::ask_no_address, name_of(index.lab(), index.lab().cards[place].id));
  }
  return fail(text::ask_no_card, name, excerpt(card));
}

Result<AskedEnd> end_at(const ReachNetwork& network, const Address& address) {
  const auto held = network.with(address);
  if (held.empty()) return fail(text::ask_nobody_has, to_text(address));
  return AskedEnd{network.nodes()[network.ports()[held.front().port].node].id, address};
}

Result<Service> parse_service(std::string_view typed) {
  const std::string text = folded(trimmed(typed));
  const std::size_t slash = text.find('/');
  const std::string transport = text.substr(0, slash);
  Service s;
  if (transport == "tcp")
    s.transport = Transport::tcp;
  else if (transport == "udp")
    s.transport = Transport::udp;
  else if (text != "ping" && text != "icmp")
    return fail(text::reach_service, excerpt(typed));
  if (slash == std::string::npos) return s;
  const char* const end = text.data() + text.size();
  const auto [at, error] = std::from_chars(text.data() + slash + 1, end, s.port);
  if (error != std::errc() || at != end || s.port < 1 || s.port > 65535)
    return fail(text::reach_service, excerpt(typed));
  return s;
}

std::string service_text(const Service& s) {
  if (s.transport == Transport::icmp) return "ping";
  std::string out(word(s.transport));
  if (s.port != 0) out += "/" + std::to_string(s.port);
  return out;
}

std::vector<OfferedService> offers_of(const Index& index, AnyId node) {
  std::vector<OfferedService> out;
  const Machine* m = node.kind == Kind::machine ? index.machine(MachineId{node.number}) : nullptr;
  if (!m) return out;
  const auto take = [&](const std::vector<Offer>& list) {
    for (const Offer& o : list) {
      const Service service{o.transport, o.transport == Transport::icmp ? 0 : o.port};
      if (std::none_of(out.begin(), out.end(), [&](const OfferedService& x) { return x.service == service; }))
        out.push_back({o.service, service});
    }
  };
  take(m->offers);
  if (const Role* role = index.role(m->role)) take(role->offers);
  return out;
}

} // namespace snug
