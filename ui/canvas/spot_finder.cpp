#include "ui/canvas/spot_finder.h"

#include "core/model/index.h"
#include "ui/canvas/shapes.h"

#include <algorithm>

namespace snug {

namespace {
constexpr int kRowSlack = 6; // above a card that still counts as its row
}

std::uint64_t key_of(const Spot& spot) {
  return (std::uint64_t{spot.carrier.number} << 32U) ^ (std::uint64_t{spot.before.number} << 8U) ^
         static_cast<std::uint64_t>(spot.band & 0xff);
}

SpotFinder::SpotFinder(const Lab& lab, std::span<const MachineId> moved) {
  const Index index(lab);
  for (const std::uint32_t place : index.carriers_first()) {
    const Machine& m = lab.machines[place];
    Facts& f = machines_[m.id.number];
    f = {m.carrier, m.band, index.is_hypervisor(place), false};
    const Facts* above = facts(m.carrier);
    f.in_hand = std::find(moved.begin(), moved.end(), m.id) != moved.end() || (above && above->in_hand);
  }
  if (!moved.empty()) from_ = machines_[moved.front().number].carrier;
}

const SpotFinder::Facts* SpotFinder::facts(AnyId id) const {
  const auto it = id.kind == Kind::machine ? machines_.find(id.number) : machines_.end();
  return it == machines_.end() ? nullptr : &it->second;
}

Spot SpotFinder::at(const Drawing& drawing, QPointF p) const {
  Spot spot;
  for (auto g = drawing.groups.rbegin(); g != drawing.groups.rend() && !spot.carrier; ++g) {
    const Facts* f = g->part == Part::machine ? facts(g->of) : nullptr;
    if (f && f->hypervisor && !f->in_hand && as_rect(g->box).contains(p)) spot.carrier = {g->of.number};
  }
  for (const Group& g : drawing.groups) {
    const Facts* f = g.part == Part::machine ? facts(g.of) : nullptr;
    if (!f || f->in_hand || f->carrier != spot.carrier) continue;
    const bool below = p.y() < g.box.y - kRowSlack;
    const bool same_row = !below && p.y() < g.box.bottom() + kRowSlack;
    spot.band = f->band;
    if (!below && !(same_row && p.x() < g.box.centre().x)) continue;
    spot.before = {g.of.number};
    break;
  }
  return spot;
}

MachineId SpotFinder::plain_under(const Drawing& drawing, QPointF p) const {
  for (std::size_t i = drawing.groups.size(); i-- > 0;) {
    const Group& g = drawing.groups[i];
    const Facts* f = g.part == Part::machine ? facts(g.of) : nullptr;
    if (!f || f->in_hand || !as_rect(g.box).contains(p)) continue;
    if (f->hypervisor || f->carrier || f->carrier == from_) return {};
    const QRectF middle =
        as_rect(g.box).adjusted(g.box.w / 4.0, g.box.h / 5.0, -g.box.w / 4.0, -g.box.h / 5.0);
    return middle.contains(p) ? MachineId{g.of.number} : MachineId{};
  }
  return {};
}

} // namespace snug
