#pragma once
// While a card or a machine is in the hand: places over the right end of rails that stand for a segment's
// gateway and its DHCP server.

#include "core/analyse/analyse.h"
#include "core/gesture/duty.h"
#include "core/layout/drawing.h"

#include <QRectF>
#include <QString>

namespace snug {

struct DutySlot {
  SegmentId segment;
  Duty duty = Duty::gateway;
  bool is_held = false;
  QString words; // "gateway gangway"; without holder faint
  QRectF box;    // of the drawing
  friend bool operator==(const DutySlot&, const DutySlot&) = default;
};

// Of one segment, or of all that are drawn. `scale`: units of the drawing for a pixel of the window.
std::vector<DutySlot> duty_slots(const Analysis&, const Drawing&, qreal scale, SegmentId only = {});
const DutySlot* slot_at(const std::vector<DutySlot>&, QPointF at);

} // namespace snug
