#include "core/base/clean.h"
#include "core/layout/content_steps.h"
#include "core/layout/metrics.h"
#include "core/model/facts.h"
#include "core/text/layout_text.h"

#include <algorithm>

namespace snug::layout {

namespace {

constexpr std::size_t kMostLines = 3; // beside a joint

class PlugReader {
 public:
  PlugReader(const Source& source, Content& content) : source_(source), content_(content) {
    rail_of_.assign(source.lab.segments.size(), kNone);
    for (std::uint32_t r = 0; r < content.rails.size(); ++r)
      rail_of_[source.analysis.index().place(content.rails[r].id)] = r;
  }

  void read() {
    const Index& index = source_.analysis.index();
    for (std::uint32_t i = 0; i < content_.machines.size(); ++i) {
      MachineText& m = content_.machines[i];
      if (!content_.is_made[i]) {
        note(m);
        continue;
      }
      for (const std::uint32_t c : index.cards_of(index.place(m.id))) read_card(source_.lab.cards[c], c, i);
      if (m.carrier == kNone) order_pins(m);
      note(m);
      if (source_.options.describe) describe(m);
    }
  }

 private:
  void note(const MachineText& m) {
    content_.any_inner_plug |= m.carrier != kNone && !m.plugs.empty();
    for (const Plug& plug : m.plugs) content_.any_hollow |= plug.hollow;
  }

  std::uint32_t rail(SegmentId id) const {
    const std::uint32_t place = source_.analysis.index().place(id);
    return place == kNowhere ? kNone : rail_of_[place];
  }

  std::vector<std::string> lines(const Card& card, std::uint32_t card_place, SegmentId segment,
                                 std::int32_t vlan) const {
    std::vector<std::string> out;
    out.reserve(kMostLines + 1);
    const std::uint32_t place = source_.analysis.index().place(segment);
    const Index& index = source_.analysis.index();
    for (const CardAddress& a : card.addresses) {
      const bool holds = a.kind == AddressKind::typed || a.kind == AddressKind::suggested;
      if (holds && a.address &&
          source_.analysis.addresses().segment_for(index, card_place, *a.address) == place)
        out.push_back(shown(source_, place, *a.address));
    }
    if (segment == card.segment) {
      for (const CardAddress& a : card.addresses) {
        if (a.kind == AddressKind::dhcp) out.push_back(source_.options.words(say(text::layout_dhcp)));
        if (a.kind == AddressKind::slaac) out.push_back(source_.options.words(say(text::layout_slaac)));
      }
    }
    if (out.size() > kMostLines) {
      const auto more = static_cast<std::int64_t>(out.size() - kMostLines + 1);
      out.resize(kMostLines - 1);
      out.push_back(source_.options.words(say(text::layout_more, Count{more})));
    }
    if (vlan != 0) out.push_back(source_.options.words(say(text::layout_vlan, Count{vlan})));
    return out;
  }

  void take_duties(const Card& card, std::uint32_t card_place, SegmentId segment, Plug& plug) const {
    const AddressesInUse& in_use = source_.analysis.addresses();
    const std::uint32_t place = source_.analysis.index().place(segment);
    for (const CardAddress& a : card.addresses)
      plug.gateway |= a.address &&
                      (a.address == in_use.gateway4(place) || a.address == in_use.gateway6(place)) &&
                      in_use.segment_for(source_.analysis.index(), card_place, *a.address) == place;
    plug.dhcp = card.dhcp == DhcpDuty::server && card.connected && card.segment == segment;
  }

  void add(std::uint32_t machine, Plug plug) {
    MachineText& m = content_.machines[machine];
    if (m.carrier != kNone) {
      plug.joined = plug.rail != kNone && carries(m.carrier, plug.rail);
      if (!source_.options.inner_addresses) plug.lines.clear();
    }
    if (m.carrier != kNone && source_.options.inner_addresses)
      for (const auto& [part, words] : duties_of(plug, source_.options)) plug.lines.push_back(words);
    plug.lines_width = widest(plug.lines, kSmall);
    if (m.carrier == kNone) plug.lines_width += duties_width(plug, source_.options);
    m.plugs.push_back(std::move(plug));
  }

  // Whether guests of this machine reach a segment outside of the PC's hypervisors.
  bool carries(std::uint32_t machine, std::uint32_t rail) const {
    const auto& list = content_.machines[machine].carried;
    return std::find(list.begin(), list.end(), rail) != list.end();
  }

  void read_card(const Card& card, std::uint32_t card_place, std::uint32_t machine) {
    const std::size_t before = content_.machines[machine].plugs.size();
    const auto has = [&](std::uint32_t r) {
      const auto& plugs = content_.machines[machine].plugs;
      return std::any_of(plugs.begin() + static_cast<std::ptrdiff_t>(before), plugs.end(),
                         [r](const Plug& p) { return p.rail == r; });
    };
    if (const std::uint32_t r = rail(card.segment); r != kNone) {
      Plug plug{card.id, r, false, card.connected, true, lines(card, card_place, card.segment, 0)};
      plug.hollow = only_carries(card) && plug.lines.empty();
      take_duties(card, card_place, card.segment, plug);
      add(machine, std::move(plug));
    }
    for (const SegmentTag& tag : card.trunk)
      if (const std::uint32_t r = rail(tag.segment); r != kNone && !has(r)) {
        Plug plug{card.id, r, false, card.connected, true, lines(card, card_place, tag.segment, tag.vlan)};
        take_duties(card, card_place, tag.segment, plug);
        add(machine, std::move(plug));
      }
    for (const SegmentTag& tag : card.carries) {
      const std::uint32_t r = rail(tag.segment);
      if (r == kNone) continue;
      if (!has(r)) {
        std::vector<std::string> words;
        if (tag.vlan != 0) words.push_back(source_.options.words(say(text::layout_vlan, Count{tag.vlan})));
        add(machine, {card.id, r, true, card.connected, true, std::move(words)});
      }
      const std::uint32_t carrier = content_.machines[machine].carrier;
      if (card.connected && (carrier == kNone || carries(carrier, r)))
        content_.machines[machine].carried.push_back(r);
    }
    if (content_.machines[machine].plugs.size() == before)
      add(machine, {card.id, kNone, false, card.connected, false, {}});
  }

  // Left to right so that labels right of a wire meet few wires: cards by their lowest rail, the lowest
  // first.
  static void order_pins(MachineText& m) {
    std::vector<std::pair<std::int64_t, std::size_t>> keys; // lowest rail of the plug's card, place
    for (std::size_t i = 0; i < m.plugs.size(); ++i) {
      std::int64_t lowest = -1;
      for (const Plug& other : m.plugs)
        if (other.card == m.plugs[i].card && other.rail != kNone)
          lowest = std::max<std::int64_t>(lowest, other.rail);
      keys.emplace_back(lowest, i);
    }
    std::stable_sort(keys.begin(), keys.end(), [&m](const auto& a, const auto& b) {
      const Plug& x = m.plugs[a.second];
      const Plug& y = m.plugs[b.second];
      if (a.first != b.first) return a.first > b.first;
      if (x.card != y.card) return x.card < y.card;
      return x.rail > y.rail;
    });
    std::vector<Plug> sorted;
    sorted.reserve(keys.size());
    for (const auto& key : keys) sorted.push_back(std::move(m.plugs[key.second]));
    m.plugs = std::move(sorted);
  }

  void describe(MachineText& m) const {
    for (const Plug& plug : m.plugs) {
      m.description += "; ";
      if (plug.rail == kNone) {
        m.description += source_.options.words(say(text::layout_not_plugged));
        continue;
      }
      const std::string& name = content_.rails[plug.rail].name;
      if (plug.hollow || plug.lines.empty()) {
        m.description += plug.hollow ? source_.options.words(say(text::layout_carries, name)) : name;
      } else {
        m.description += source_.options.words(say(text::layout_at, name, plug.lines));
      }
      if (m.carrier == kNone)
        for (const auto& [part, duty] : duties_of(plug, source_.options)) m.description += ", " + duty;
    }
  }

  const Source& source_;
  Content& content_;
  std::vector<std::uint32_t> rail_of_; // by place in lab.segments
};

} // namespace

std::vector<std::pair<Part, std::string>> duties_of(const Plug& plug, const DrawOptions& o) {
  std::vector<std::pair<Part, std::string>> out;
  if (plug.gateway) out.emplace_back(Part::gateway, o.words(say(text::layout_gateway)));
  if (plug.dhcp) out.emplace_back(Part::dhcp, o.words(say(text::layout_dhcp_server)));
  return out;
}

int duties_width(const Plug& plug, const DrawOptions& o) {
  int w = 0;
  for (const auto& [part, words] : duties_of(plug, o)) w += kDutyGap + 2 * kDutyPad + width_of(words, kSmall);
  return w;
}

void read_plugs(const Source& source, Content& content) { PlugReader(source, content).read(); }

} // namespace snug::layout
