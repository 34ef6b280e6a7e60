#include "core/layout/way.h"

#include <algorithm>
#include <map>

namespace snug {

namespace {

struct Wire {
  CardId card;
  SegmentId segment;
  friend bool operator==(const Wire&, const Wire&) = default;
};

bool is_among(std::span<const AnyId> ids, AnyId id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

// The card of a machine that carries a segment to its guests.
CardId carrying_card(const Index& index, std::uint32_t machine, SegmentId segment) {
  for (const std::uint32_t c : index.cards_of(machine)) {
    const Card& card = index.lab().cards[c];
    const auto is_it = [segment](const SegmentTag& t) { return t.segment == segment; };
    if (card.connected && std::any_of(card.carries.begin(), card.carries.end(), is_it)) return card.id;
  }
  return {};
}

// The wire on the PC by which a card meets a segment.
void add_wire(const Index& index, const Card& card, SegmentId segment, std::vector<Wire>& out) {
  Wire wire{card.id, segment};
  const std::uint32_t machine = index.place(card.machine);
  for (std::uint32_t at = machine == kNowhere ? kNowhere : index.carrier_of(machine);
       at != kNowhere && wire.card; at = index.carrier_of(at))
    wire.card = carrying_card(index, at, segment);
  if (wire.card && std::find(out.begin(), out.end(), wire) == out.end()) out.push_back(wire);
}

std::vector<Wire> wires_of(const Index& index, std::span<const AnyId> passed) {
  std::vector<Wire> out;
  for (const AnyId id : passed) {
    const Card* card = id.kind == Kind::card ? index.card(CardId{id.number}) : nullptr;
    if (!card) continue;
    if (card->segment) add_wire(index, *card, card->segment, out);
    for (const SegmentTag& t : card->trunk)
      if (is_among(passed, t.segment)) add_wire(index, *card, t.segment, out);
  }
  return out;
}

// Stretches of a segment, and its riser.
struct RailLines {
  std::vector<int> stretches; // y
  std::optional<int> riser;   // x
};

std::map<std::uint32_t, RailLines> rails_of(const Drawing& drawing) {
  std::map<std::uint32_t, RailLines> out;
  for (const AnyShape& shape : drawing.shapes) {
    const auto* line = std::get_if<LineShape>(&shape);
    if (!line || line->of.kind != Kind::segment) continue;
    if (line->part == Part::rail) out[line->of.number].stretches.push_back(line->from.y);
    if (line->part == Part::riser) out[line->of.number].riser = line->from.x;
  }
  return out;
}

// Between the joints: along each stretch, by the riser from one stretch to another.
void add_rail(const RailLines& rail, const std::vector<Point>& joints, std::vector<WayLine>& out) {
  std::map<int, std::pair<int, int>> ends; // by y: least and most x
  for (const Point& j : joints) {
    auto& [least, most] = ends.try_emplace(j.y, j.x, j.x).first->second;
    least = std::min(least, j.x);
    most = std::max(most, j.x);
  }
  const bool rises = ends.size() > 1 && rail.riser;
  for (const auto& [y, x] : ends) {
    const int right = rises ? *rail.riser : x.second;
    if (right > x.first) out.push_back({{x.first, y}, {right, y}});
  }
  if (rises) out.push_back({{*rail.riser, ends.begin()->first}, {*rail.riser, ends.rbegin()->first}});
}

using Joints = std::map<std::uint32_t, std::vector<Point>>; // by segment

// Whether it goes from this segment to its LAN or through its translator.
bool leaves_by(const Index& index, std::span<const AnyId> passed, SegmentId id) {
  const std::uint32_t place = index.place(id);
  if (place == kNowhere || !is_among(passed, id)) return false;
  const Segment& s = index.lab().segments[place];
  if (s.type == SegmentKind::isolated) return false;
  return (s.lan && is_among(passed, s.lan)) ||
         (s.type == SegmentKind::nat && is_among(passed, AnyId{Kind::outside, 0}));
}

// The PC stands before the segment whose socket it uses.
bool uses_socket(std::span<const AnyId> passed, SegmentId id) {
  for (std::size_t i = 1; i < passed.size(); ++i)
    if (passed[i - 1].kind == Kind::pc && passed[i] == AnyId(id)) return true;
  return false;
}

// Out of the frame to the left, and to the PC's sockets.
void add_ends(const Index& index, const Drawing& drawing, std::span<const AnyId> passed, Joints& joints,
              std::vector<WayLine>& out) {
  SegmentId begun; // its first stretch is where it leaves
  for (const AnyShape& shape : drawing.shapes) {
    const auto* line = std::get_if<LineShape>(&shape);
    if (!line || line->of.kind != Kind::segment) continue;
    const SegmentId id{line->of.number};
    const bool is_socket = line->part == Part::socket && uses_socket(passed, id);
    const bool leaves = leaves_by(index, passed, id);
    if (is_socket || (line->part == Part::lane && leaves)) out.push_back({line->from, line->to});
    if (is_socket || (line->part == Part::rail && leaves && begun != id))
      joints[id.number].push_back(line->from);
    if (line->part == Part::rail) begun = id;
  }
}

void add_wires(const Drawing& drawing, const std::vector<Wire>& wires,
               const std::map<std::uint32_t, RailLines>& rails, Joints& joints, std::vector<WayLine>& out) {
  std::optional<int> top; // of the wire whose joint comes next
  for (const AnyShape& shape : drawing.shapes) {
    if (const auto* line = std::get_if<LineShape>(&shape); line && line->part == Part::wire)
      if (!top) top = line->from.y;
    const auto* joint = std::get_if<CircleShape>(&shape);
    if (!joint || joint->part != Part::joint) continue;
    const Point at = joint->centre;
    for (const Wire& w : wires) {
      const auto rail = rails.find(w.segment.number);
      if (joint->of != AnyId(w.card) || rail == rails.end() ||
          std::find(rail->second.stretches.begin(), rail->second.stretches.end(), at.y) ==
              rail->second.stretches.end())
        continue;
      out.push_back({{at.x, top.value_or(at.y)}, at});
      joints[w.segment.number].push_back(at);
    }
    top.reset();
  }
}

} // namespace

std::vector<WayLine> lines_of_way(const Index& index, const Drawing& drawing, std::span<const AnyId> passed) {
  std::vector<WayLine> out;
  if (passed.empty()) return out;
  const auto rails = rails_of(drawing);
  Joints joints;
  add_wires(drawing, wires_of(index, passed), rails, joints, out);
  add_ends(index, drawing, passed, joints, out);
  for (const auto& [segment, at] : joints) add_rail(rails.at(segment), at, out);
  return out;
}

} // namespace snug
