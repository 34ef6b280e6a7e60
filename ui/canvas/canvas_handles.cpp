// Handles from which something new is pulled: a card from a machine's lower edge, the PC's socket from the
// frame.

#include "core/text/gesture_text.h"
#include "ui/canvas/canvas.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"

#include <QPainter>

namespace snug {

namespace {

constexpr qreal kRadius = 9, kTarget = 12; // pixels of the window; 24 across (WCAG 2.5.8)
constexpr int kInset = 10;                 // from a card's left edge, where no pin is; an inner one's right
constexpr int kHead = 27;                  // below the frame's upper edge

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
  return on_view(QPointF(inner ? box.right() - kInset : box.x + kInset, box.bottom()));
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
