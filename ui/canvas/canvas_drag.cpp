// What is pressed on the picture becomes a gesture, which follows the pointer until it is let go.

#include "core/gesture/carry.h"
#include "ui/canvas/canvas.h"

#include <algorithm>

namespace snug {

namespace {

bool may_be_dragged(const Hit& h) {
  return h.of.kind == Kind::machine || h.of.kind == Kind::card || h.of.kind == Kind::segment;
}

bool is_duty(const Hit& h) {
  return h.of.kind == Kind::card && (h.part == Part::gateway || h.part == Part::dhcp);
}

} // namespace

void Canvas::start_drag(QPointF at) {
  const QPointF on = on_drawing(pressed_at_);
  take_before();
  if (pulled_) {
    gesture_ = pull_from(pulled_);
  } else if (const SegmentId rail = is_duty(pressed_) ? rail_at(drawing_, at_joint(pressed_)) : SegmentId{}) {
    gesture_ = drag_duty(session_, pressed_.part == Part::dhcp ? Duty::dhcp : Duty::gateway, rail, on);
  } else if (pressed_.of.kind == Kind::card) {
    gesture_ = pull_pin(on);
  } else if (pressed_.part == Part::socket) {
    gesture_ = pull_socket(session_, SegmentId{pressed_.of.number}, on);
  } else if (pressed_.of.kind == Kind::segment) {
    gesture_ = drag_rail(session_, pressed_, drawing_, on);
  } else if (pressed_.part == Part::band) {
    gesture_ = drag_band(session_, MachineId{pressed_.of.number});
  } else if (pressed_.of.kind == Kind::machine) {
    std::vector<AnyId> ids = session_.selection();
    if (!session_.is_selected(pressed_.of)) ids = {pressed_.of};
    const auto machines = outermost(session_.lab(), ids);
    gesture_ = drag_machines(session_, machines);
    if (machines.size() == 1) gesture_->offer_duties(duty_slots(session_.analysis(), drawing_, slot_scale()));
  } else {
    gesture_ = band_select(session_, on, keep_);
  }
  viewport()->setCursor(pulled_                    ? Qt::CrossCursor
                        : may_be_dragged(pressed_) ? Qt::ClosedHandCursor
                                                   : Qt::ArrowCursor);
  pulled_ = {};
  update_duties();
  move_gesture(at);
}

// What is there for a free hand only goes.
void Canvas::take_before() {
  before_ = drawing_;
  for (const AnyId id : handles()) update_around(id);
  for (const AnyId id : session_.selection()) update_around(id);
  update_around(focus_);
}

// Where the rail is on which a mark of a duty stands: below the mark.
QPointF Canvas::at_joint(const Hit& mark) const {
  const QRectF box = bounds(drawing_.shapes[mark.shape]);
  return {box.left(), box.bottom() + 3};
}

// Duties stand over the picture at a size that can be hit at every zoom.
qreal Canvas::slot_scale() const { return std::clamp(1 / zoom_, 1.0, 1.7); }

void Canvas::update_duties() {
  for (const DutySlot& s : gesture_->duties())
    viewport()->update(QRectF(on_view(s.box.topLeft()), on_view(s.box.bottomRight()))
                           .toAlignedRect()
                           .adjusted(-3, -3, 3, 3));
}

// A hollow pin is pulled to what it carries as well, any other is moved; Shift means the other of both.
std::unique_ptr<Gesture> Canvas::pull_pin(QPointF on) {
  const auto* box = std::get_if<BoxShape>(&drawing_.shapes[pressed_.shape]);
  const QPointF pin = box ? QPointF(box->box.centre().x, box->box.centre().y) : on;
  const CardId id{pressed_.of.number};
  const Card& card = *snug::find<Card>(session_.lab(), id);
  const SegmentId from = segment_of_pin(drawing_, id, pin);
  const bool hollow = from && is_hollow(card, from);
  const Index& index = session_.analysis().index();
  const bool may_carry = index.is_hypervisor(index.place(card.machine));
  if (may_carry && hollow != keep_) return pull_carriage(session_, id, hollow ? from : SegmentId{}, pin);
  auto drag = drag_pin(session_, id, drawing_, pin);
  if (from && !hollow) drag->offer_duties(duty_slots(session_.analysis(), drawing_, slot_scale(), from));
  return drag;
}

void Canvas::move_gesture(QPointF view) {
  pointer_ = view;
  const DutySlot* over = gesture_->duty();
  const bool shown = gesture_->shows_duties();
  gesture_->move(before_, drawing_, on_drawing(view));
  if (gesture_->duty() != over || gesture_->shows_duties() != shown) update_duties();
  update_over();
}

void Canvas::finish_gesture(QPointF at) {
  move_gesture(at);
  const std::unique_ptr<Gesture> done = std::move(gesture_);
  placing_ = false;
  viewport()->unsetCursor();
  const bool dropped = done->drop();
  draw_again();
  take_size();
  if (dropped && done->goes_there() && !session_.selection().empty())
    show_place(session_.selection().front());
  update_over();
  viewport()->update(); // the view may have moved under the words
}

void Canvas::cancel() {
  if (!gesture_) return;
  gesture_.reset();
  placing_ = is_pressed_ = false;
  viewport()->unsetCursor();
  session_.end_preview();
  draw_again();
  take_size();
  update_over();
  viewport()->update();
}

} // namespace snug
