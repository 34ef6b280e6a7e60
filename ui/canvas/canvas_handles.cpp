// Handles from which something new is pulled: a card from a machine's lower edge, the PC's socket from the
// frame. Marks that are pressed: power.

#include "core/gesture/carry.h"
#include "core/text/gesture_text.h"
#include "core/text/hand_text.h"
#include "core/text/power_text.h"
#include "ui/canvas/canvas.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QPainter>

#include <algorithm>
#include <cstdlib>
#include <span>

namespace snug {

namespace {

constexpr qreal kRadius = 9, kTarget = 12; // pixels of the window; 24 across (WCAG 2.5.8)
constexpr int kInset = 10;                 // from a card's left edge; of an inner one from its right
constexpr qreal kPin = 6;                  // half of a pin and a little
constexpr int kHead = 27;                  // below the frame's upper edge

// Where pins stand on the lower edge of a machine.
std::vector<int> pins_on(const Drawing& drawing, AnyId machine, const snug::Box& box) {
  std::vector<int> out;
  const auto group = std::find_if(drawing.groups.begin(), drawing.groups.end(),
                                  [machine](const Group& g) { return g.of == machine; });
  if (group == drawing.groups.end()) return out;
  for (std::uint32_t i = group->first; i < group->end; ++i) {
    const auto* pin = std::get_if<BoxShape>(&drawing.shapes[i]);
    if (pin && pin->part == Part::pin && pin->of.kind == Kind::card &&
        std::abs(pin->box.centre().y - box.bottom()) < kInset)
      out.push_back(pin->box.centre().x);
  }
  return out;
}

// Of some places the first that is `wanted` away from all of them, else the one farthest away.
int clear_of(std::span<const int> pins, std::initializer_list<int> places, qreal wanted) {
  int best = *places.begin();
  qreal most = -1;
  for (const int x : places) {
    qreal nearest = wanted;
    for (const int pin : pins) nearest = std::min<qreal>(nearest, std::abs(pin - x));
    if (nearest <= most) continue;
    most = nearest;
    best = x;
  }
  return best;
}

} // namespace

// Of the PC always; of the machine under the pointer and of one that is selected alone.
std::vector<AnyId> Canvas::handles() const {
  std::vector<AnyId> out{{Kind::pc, 0}};
  const auto add = [&](AnyId id) {
    if (id.kind == Kind::machine && out.back() != id) out.push_back(id);
  };
  if (session_.selection().size() == 1) add(session_.selection().front());
  add(hover_);
  return out;
}

std::optional<QPointF> Canvas::handle_of(AnyId id) const {
  const snug::Box box = box_of(drawing_, id);
  if (box.w == 0) return std::nullopt;
  if (id.kind == Kind::pc) return on_view(QPointF(box.right(), box.y + kHead));
  const bool inner = bool(snug::find<Machine>(session_.shown().lab(), MachineId{id.number})->carrier);
  const int left = box.x + kInset, right = box.right() - kInset;
  const qreal wanted = (kRadius + kPin) / zoom_;
  const std::vector<int> pins = pins_on(drawing_, id, box);
  const int x = inner ? clear_of(pins, {right, left, box.right(), box.x}, wanted)
                      : clear_of(pins, {left, right, box.x, box.right()}, wanted);
  return on_view(QPointF(x, box.bottom()));
}

AnyId Canvas::handle_at(QPointF view) const {
  for (const AnyId id : handles()) {
    const auto at = handle_of(id);
    if (at && (view - *at).manhattanLength() <= kTarget) return id;
  }
  return {};
}

std::unique_ptr<Gesture> Canvas::pull_from(AnyId id) {
  const QPointF from = on_drawing(*handle_of(id));
  if (id.kind == Kind::pc) return pull_socket(session_, {}, from);
  return pull_card(session_, MachineId{id.number}, from);
}

QString Canvas::handle_help(AnyId id) const {
  if (id.kind == Kind::pc) return words(text::gesture_pull_socket_help, session_.lab().pc.name);
  return words(text::gesture_pull_card_help, name_of(session_.lab(), id));
}

// Of a pin: its card's name, and what pulling it does; of a mark what dragging it does.
QString Canvas::pin_help(const Hit& h) const {
  if (h.part == Part::band) return words(text::hand_band_help);
  const Card* card =
      h.of.kind == Kind::card ? snug::find<Card>(session_.lab(), CardId{h.of.number}) : nullptr;
  if (card && (h.part == Part::gateway || h.part == Part::dhcp))
    return words(text::hand_duty_help,
                 say(h.part == Part::dhcp ? text::hand_slot_dhcp : text::hand_slot_gateway),
                 name_of(session_.lab(), rail_at(drawing_, at_joint(h))));
  if (!card || h.part != Part::pin) return {};
  QString out = as_qt(name_of(session_.lab(), h.of));
  const Index& index = session_.analysis().index();
  if (!index.is_hypervisor(index.place(card->machine))) return out;
  const auto* box = std::get_if<BoxShape>(&drawing_.shapes[h.shape]);
  const SegmentId from = box ? segment_of_pin(drawing_, card->id, as_rect(box->box).center()) : SegmentId{};
  const bool hollow = from && is_hollow(*card, from);
  return out + QLatin1Char('\n') + words(hollow ? text::hand_hollow_help : text::hand_pin_help);
}

// Of a power mark: as far as a handle, but not over the name beside it.
qreal Canvas::power_reach() const {
  constexpr qreal kMost = 11;
  return std::min(kTarget / zoom_, kMost);
}

MachineId Canvas::power_at(QPointF view) const {
  return power_under(drawing_, on_drawing(view), power_reach());
}

QString Canvas::power_help(MachineId id) const {
  const auto then = switch_over(session_.lab(), session_.exercise(), id);
  if (!then) return whole_words(then.error().message);
  return words(then->on ? text::power_help_on : text::power_help_off, name_of(session_.lab(), id),
               name_of(session_.lab(), session_.exercise()));
}

void Canvas::toggle_power(MachineId id) {
  auto then = switch_over(session_.lab(), session_.exercise(), id);
  if (!then) return session_.tell(then.error());
  session_.seal();
  if (session_.perform(std::move(then->edit))) tell_along(session_, id, *then);
}

// In pixels of the window, so that they can be hit at every zoom.
void Canvas::paint_handles(QPainter& painter) {
  painter.save();
  painter.resetTransform();
  for (const AnyId id : handles()) {
    const auto at = handle_of(id);
    if (!at) continue;
    const bool pc = id.kind == Kind::pc;
    const QColor ink = colour(colours(), pc && pulled_ != id ? Ink::frame : Ink::info);
    painter.setPen(QPen(ink, 1.6));
    painter.setBrush(colour(colours(), Ink::inside));
    const QRectF box(*at - QPointF(kRadius, kRadius), QSizeF(2 * kRadius, 2 * kRadius));
    if (pc)
      painter.drawRoundedRect(box, 4, 4);
    else
      painter.drawEllipse(box);
    constexpr qreal kArm = 4.5;
    painter.drawLine(*at - QPointF(kArm, 0), *at + QPointF(kArm, 0));
    painter.drawLine(*at - QPointF(0, kArm), *at + QPointF(0, kArm));
  }
  painter.restore();
}

} // namespace snug
