// Dragging rows of the outline.

#include "core/gesture/consequence.h"
#include "ui/outline/outline_view.h"
#include "ui/session/words.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QStyleHints>

#include <algorithm>

namespace snug {

namespace {

std::vector<MachineId> machines_of(const std::vector<AnyId>& ids) {
  std::vector<MachineId> out;
  for (const AnyId id : ids) out.push_back({id.number});
  return out;
}

} // namespace

void OutlineView::mousePressEvent(QMouseEvent* event) {
  const QModelIndex row = indexAt(event->position().toPoint());
  QTreeView::mousePressEvent(event);
  pressed_at_ = event->position().toPoint();
  const Kind kind = model_->id(row).kind;
  may_drag_ = event->button() == Qt::LeftButton && (kind == Kind::machine || kind == Kind::card) &&
              selectionModel()->isSelected(row);
}

void OutlineView::mouseMoveEvent(QMouseEvent* event) {
  const QPoint at = event->position().toPoint();
  const bool far = (at - pressed_at_).manhattanLength() >= QGuiApplication::styleHints()->startDragDistance();
  if (may_drag_ && !dragging_ && (event->buttons() & Qt::LeftButton) != 0 && far) begin_drag();
  if (!dragging_) return;
  const QPoint global = event->globalPosition().toPoint();
  const bool outside = !viewport()->rect().contains(at);
  if (outside) show_aim({});
  canvas_.carry(global);
  if (!outside) show_aim(aim_at(at));
}

void OutlineView::begin_drag() {
  const AnyId first = model_->id(indexAt(pressed_at_));
  if (first.kind == Kind::machine) {
    held_.clear();
    for (const MachineId m : outermost(session_.lab(), session_.selection())) held_.push_back(m);
    canvas_.begin(drag_machines(session_, machines_of(held_)));
  } else {
    held_ = {first};
    const CardId card{first.number};
    const snug::Box pin = box_of(canvas_.drawing(), first);
    canvas_.begin(drag_pin(session_, card, canvas_.drawing(), QPointF(pin.centre().x, pin.centre().y)));
  }
  dragging_ = true;
  setState(QAbstractItemView::NoState);
  viewport()->setCursor(Qt::ClosedHandCursor);
}

// The upper and the lower quarter of a machine's row mean a place beside it.
OutlineView::Aim OutlineView::aim_at(QPoint at) const {
  QModelIndex row = indexAt(at).siblingAtColumn(0);
  Kind kind = model_->id(row).kind;
  const bool card_held = held_.front().kind == Kind::card;
  while (row.isValid() && (kind == Kind::card || kind == Kind::disk)) {
    row = row.parent();
    kind = model_->id(row).kind;
  }
  if (!row.isValid() || std::find(held_.begin(), held_.end(), model_->id(row)) != held_.end()) return {};
  if (kind == Kind::segment) return card_held || held_.size() == 1 ? Aim{row, 0} : Aim{};
  if (card_held || (kind != Kind::machine && kind != Kind::pc)) return {};
  if (kind == Kind::pc || model_->id(indexAt(at)) != model_->id(row)) return {row, 0};
  const QRect box = visualRect(row);
  const int quarter = box.height() / 4;
  return {row, at.y() < box.top() + quarter ? -1 : at.y() > box.bottom() - quarter ? 1 : 0};
}

Result<Edit> OutlineView::move_to(const Aim& aim) const {
  const Lab& lab = session_.lab();
  const std::vector<MachineId> machines = machines_of(held_);
  const MachineId onto{model_->id(aim.row).number};
  if (aim.side == 0) return move_machines(lab, machines, {onto, 0, {}});
  const Machine& beside = *snug::find<Machine>(lab, onto);
  Spot spot{beside.carrier, beside.band, onto};
  if (aim.side > 0) {
    const std::vector<MachineId> order = guests_in_order(lab, beside.carrier);
    const auto next = std::find(order.begin(), order.end(), onto) + 1;
    const bool same_band = next != order.end() && snug::find<Machine>(lab, *next)->band == beside.band;
    spot.before = same_band ? *next : MachineId{};
  }
  return move_machines(lab, machines, spot);
}

std::optional<Result<Edit>> OutlineView::edit_for(const Aim& aim) const {
  if (!aim.row.isValid()) return std::nullopt;
  const Lab& lab = session_.lab();
  const AnyId onto = model_->id(aim.row), held = held_.front();
  if (onto.kind != Kind::segment) return move_to(aim);
  const SegmentId segment{onto.number};
  if (held.kind == Kind::card) return plug_card(lab, CardId{held.number}, segment);
  auto added = add_card(lab, MachineId{held.number}, segment);
  if (!added) return Result<Edit>(fail(added.error()));
  return Result<Edit>(std::move(added->edit));
}

void OutlineView::show_aim(const Aim& aim) {
  if (aim == aim_) return;
  aim_ = aim;
  viewport()->update();
  const auto edit = edit_for(aim);
  if (!edit || !*edit || (*edit)->empty()) session_.end_preview();
  if (!edit) return emit said({}, false);
  if (!*edit) return emit said(words(edit->error().message), true);
  if ((*edit)->empty()) return emit said({}, false);
  session_.preview(**edit);
  QStringList lines{words((*edit)->label)};
  for (const Message& m : consequences(session_.analysis(), session_.shown(), session_.exercise()))
    lines << words(m);
  emit said(lines.join(QLatin1Char('\n')), false);
}

void OutlineView::end_drag(bool drop) {
  dragging_ = may_drag_ = false;
  viewport()->unsetCursor();
  const Aim aim = std::exchange(aim_, {});
  viewport()->update();
  auto edit = drop ? edit_for(aim) : std::nullopt;
  canvas_.cancel();
  session_.end_preview();
  emit said({}, false);
  if (!edit) return;
  session_.seal();
  const std::vector<AnyId> held = held_;
  if (session_.perform(std::move(*edit))) session_.select(held);
}

void OutlineView::mouseReleaseEvent(QMouseEvent* event) {
  may_drag_ = false;
  const QPoint at = event->position().toPoint();
  if (dragging_) {
    if (viewport()->rect().contains(at)) return end_drag(true);
    canvas_.put_down(event->globalPosition().toPoint());
    return end_drag(false);
  }
  const QModelIndex row = indexAt(at);
  QTreeView::mouseReleaseEvent(event);
  if (event->button() == Qt::LeftButton && event->modifiers() == Qt::NoModifier && row.isValid() &&
      selectionModel()->isSelected(row) && selectionModel()->selectedRows().size() > 1)
    selectionModel()->select(row, QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
}

void OutlineView::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && dragging_) return end_drag(false);
  QTreeView::keyPressEvent(event);
}

} // namespace snug
