#include "core/layout/content_steps.h"

#include "core/base/clean.h"
#include "core/text/layout_text.h"

#include <algorithm>
#include <numeric>

namespace snug::layout {

namespace {

// Hues in the order that keeps the first few far apart, each with its own pattern.
constexpr std::array<Ink, 6> kHues{Ink::lagoon, Ink::amber, Ink::violet, Ink::berry, Ink::moss, Ink::cobalt};
constexpr std::array<Dash, 6> kPatterns{Dash::long_dash,  Dash::ticks, Dash::dash,
                                        Dash::short_dash, Dash::dots,  Dash::dash_dot};
constexpr std::array<Dash, 4> kBridged{Dash::solid, Dash::ticks, Dash::long_dash, Dash::dash_dot};

std::string letter(std::size_t i) {
  std::string out(1, static_cast<char>('A' + i % 26));
  return i < 26 ? out : letter(i / 26 - 1) + out;
}

const Template& kind_word(SegmentKind kind) {
  return kind == SegmentKind::isolated  ? text::layout_isolated
         : kind == SegmentKind::bridged ? text::layout_bridged
                                        : text::layout_nat;
}

// Names of the machines that give addresses.
std::vector<std::string> servers_on(const Source& source, std::uint32_t place) {
  std::vector<std::string> servers;
  for (const auto& range : source.analysis.addresses().ranges(place)) {
    const Card* card =
        range.server.kind == Kind::card ? source.analysis.index().card(CardId{range.server.number}) : nullptr;
    if (card == nullptr) continue;
    const std::string name = clean(name_of(source.lab, card->machine));
    if (std::find(servers.begin(), servers.end(), name) == servers.end()) servers.push_back(name);
  }
  return servers;
}

std::vector<std::string> details(const Source& source, const Segment& s, std::uint32_t place,
                                 const std::vector<std::string>& servers) {
  const AddressesInUse& in_use = source.analysis.addresses();
  const auto prefix4 = in_use.prefix4(place);
  const auto prefix6 = in_use.prefix6(place);
  std::string first = prefix4   ? to_text(*prefix4)
                      : prefix6 ? to_text(*prefix6)
                                : source.options.words(say(text::layout_no_prefix));
  std::vector<std::string> lines{first + " · " + source.options.words(say(kind_word(s.type)))};
  if (prefix4 && prefix6) lines.push_back(to_text(*prefix6));
  std::string more;
  const auto add = [&more](const std::string& words) { more += (more.empty() ? "" : " · ") + words; };
  for (const HeldAddress& held : in_use.on(place))
    if (held.holder == Holder::translator)
      add(source.options.words(say(text::layout_translator, to_text(held.address))));
  if (s.mtu != 1500) add(source.options.words(say(text::layout_mtu, Count{s.mtu})));
  if (s.vlan != 0) add(source.options.words(say(text::layout_vlan, Count{s.vlan})));
  if (!servers.empty()) add(source.options.words(say(text::layout_dhcp_by, servers)));
  if (!more.empty()) lines.push_back(more);
  return lines;
}

void set_socket(const Source& source, const Segment& s, RailText& rail) {
  if (!s.pc_socket) return;
  rail.socket = true;
  const std::uint32_t place = source.analysis.index().place(s.id);
  std::vector<std::string> addresses;
  for (const auto& a : {s.pc_address4, s.pc_address6})
    if (a) addresses.push_back(shown(source, place, *a));
  std::string joined;
  for (const std::string& a : addresses) joined += (joined.empty() ? "" : " · ") + a;
  rail.socket_text =
      source.options.words(joined.empty() ? say(text::layout_socket_bare) : say(text::layout_socket, joined));
}

} // namespace

std::string shown(const Source& source, std::uint32_t segment, const Address& address) {
  const AddressesInUse& in_use = source.analysis.addresses();
  const auto prefix = address.is_v4() ? in_use.prefix4(segment) : in_use.prefix6(segment);
  std::string whole = to_text(address);
  if (source.options.full_addresses || !prefix || !prefix->contains(address)) return whole;
  if (!address.is_v4()) return ":" + whole.substr(whole.find_last_of(':') + 1);
  std::size_t dot = whole.find_last_of('.');
  if (prefix->length() < 24 && prefix->length() >= 16) dot = whole.find_last_of('.', dot - 1);
  return prefix->length() < 16 ? whole : whole.substr(dot);
}

namespace {

// Letter, colour and pattern follow the segments of the lab, not their order on the picture: moving a rail
// leaves them.
void dress(const Lab& lab, std::vector<RailText>& rails) {
  std::size_t bridged = 0;
  std::size_t others = 0;
  for (std::size_t place = 0; place < lab.segments.size(); ++place) {
    RailText& rail = rails[place];
    rail.letter = letter(place);
    if (lab.segments[place].type == SegmentKind::bridged) {
      rail.dash = kBridged[bridged++ % kBridged.size()];
    } else {
      rail.ink = kHues[others % kHues.size()];
      rail.dash = kPatterns[(others + others / kHues.size()) % kPatterns.size()];
      ++others;
    }
  }
}

std::string joined(const std::vector<std::string>& lines) {
  std::string out;
  for (const std::string& line : lines) out += (out.empty() ? "" : " · ") + line;
  return out;
}

// The next rail as it was before; false: it names machines, which may be others now.
bool keep(const Source& source, std::uint32_t place, Content& content) {
  if (!source.before || !source.before->rails_are_as_they_were) return false;
  RailText& before = source.before->content.rails[content.rails.size()];
  if (before.names_machines || !servers_on(source, place).empty()) return false;
  RailText& rail = content.rails.emplace_back(std::move(before));
  rail.mark = {};
  rail.description = joined(rail.details);
  if (rail.type != SegmentKind::isolated) rail.lan = lan_of(source, source.lab.segments[place].lan, content);
  return true;
}

} // namespace

void read_rails(const Source& source, Content& content) {
  const Lab& lab = source.lab;
  std::vector<RailText> dressed(lab.segments.size());
  dress(lab, dressed);
  std::vector<std::uint32_t> order(lab.segments.size());
  std::iota(order.begin(), order.end(), 0U);
  std::stable_sort(order.begin(), order.end(), [&lab](std::uint32_t a, std::uint32_t b) {
    return lab.segments[a].order < lab.segments[b].order;
  });
  content.rails.reserve(order.size());
  for (const std::uint32_t place : order) {
    const Segment& s = lab.segments[place];
    if (keep(source, place, content)) continue;
    RailText rail = std::move(dressed[place]);
    rail.id = s.id;
    rail.name = clean(s.name);
    rail.title = clean(name_of(lab, s.id));
    if (rail.name.empty()) rail.name = source.options.words(say(text::layout_no_name));
    const std::vector<std::string> servers = servers_on(source, place);
    rail.names_machines = !servers.empty();
    rail.details = details(source, s, place, servers);
    rail.description = joined(rail.details);
    rail.type = s.type;
    if (s.type != SegmentKind::isolated) rail.lan = lan_of(source, s.lan, content);
    set_socket(source, s, rail);
    content.rails.push_back(std::move(rail));
  }
}

void read_lans(const Source& source, Content& content) {
  for (const Lan& lan : source.lab.lans) {
    LanText text;
    text.id = lan.id;
    text.name = clean(lan.name.empty() ? source.options.words(say(text::layout_no_name)) : lan.name);
    text.title = text.name;
    if (!lan.router.empty()) text.lines.push_back(clean(lan.router));
    if (lan.gateway4) text.lines.push_back(to_text(*lan.gateway4));
    if (lan.gateway6) text.lines.push_back(to_text(*lan.gateway6));
    if (lan.medium != Medium::unknown)
      text.lines.push_back(source.options.words(
          say(lan.medium == Medium::wired ? text::layout_wired : text::layout_wireless)));
    for (const std::string& line : text.lines)
      text.description += (text.description.empty() ? "" : ", ") + line;
    content.lans.push_back(std::move(text));
  }
}

std::uint32_t lan_of(const Source& source, LanId id, Content& content) {
  const std::uint32_t place = source.analysis.index().place(id);
  if (place != kNowhere) return place;
  if (content.lans.size() == source.lab.lans.size()) {
    LanText text;
    text.name = text.title = source.options.words(say(text::layout_unnamed_lan));
    content.lans.push_back(std::move(text));
  }
  return static_cast<std::uint32_t>(content.lans.size() - 1);
}

} // namespace snug::layout
