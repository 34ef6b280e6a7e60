#include "ui/canvas/duty_slots.h"

#include "core/layout/metrics.h"
#include "core/text/hand_text.h"
#include "ui/session/words.h"

#include <algorithm>

namespace snug {

namespace {

constexpr int kHigh = 18, kPad = 7, kGap = 5, kInset = 6; // pixels of the window

QString words_of(const Analysis& a, Duty duty, SegmentId segment, bool& is_held) {
  QString bare = words(duty == Duty::gateway ? text::hand_slot_gateway : text::hand_slot_dhcp);
  const CardId holder = holder_of(a.index(), a.addresses(), duty, segment);
  is_held = bool(holder);
  if (!holder) return bare;
  return bare + QStringLiteral(": ") + as_qt(name_of(a.lab(), a.index().card(holder)->machine));
}

// Above a point at the right end of a rail, one beside the other.
void add_slots(const Analysis& a, SegmentId segment, Point end, qreal scale, std::vector<DutySlot>& out) {
  qreal right = end.x - kInset * scale;
  for (const Duty duty : {Duty::dhcp, Duty::gateway}) {
    DutySlot s{segment, duty, false, {}, {}};
    s.words = words_of(a, duty, segment, s.is_held);
    const qreal w = (layout::width_of(s.words.toStdString(), layout::kPlain) + 2 * kPad) * scale;
    s.box = QRectF(right - w, end.y - (kHigh + kGap) * scale, w, kHigh * scale);
    right -= w + kGap * scale;
    out.push_back(std::move(s));
  }
}

} // namespace

std::vector<DutySlot> duty_slots(const Analysis& a, const Drawing& drawing, qreal scale, SegmentId only) {
  std::vector<DutySlot> out;
  for (const AnyShape& shape : drawing.shapes) {
    const auto* line = std::get_if<LineShape>(&shape);
    if (!line || line->part != Part::rail || (only && line->of != AnyId(only))) continue;
    const SegmentId segment{line->of.number};
    const auto same = [segment](const DutySlot& s) { return s.segment == segment; };
    if (std::none_of(out.begin(), out.end(), same)) add_slots(a, segment, line->to, scale, out);
  }
  return out;
}

const DutySlot* slot_at(const std::vector<DutySlot>& slots_there, QPointF at) {
  const auto found = std::find_if(slots_there.begin(), slots_there.end(),
                                  [at](const DutySlot& s) { return s.box.contains(at); });
  return found == slots_there.end() ? nullptr : &*found;
}

} // namespace snug
