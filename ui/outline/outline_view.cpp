#include "ui/outline/outline_view.h"

#include "core/text/outline_text.h"
#include "core/text/tip_text.h"
#include "ui/session/words.h"

#include <QContextMenuEvent>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>

namespace snug {

OutlineView::OutlineView(Session& session, Canvas& canvas, QWidget* parent)
    : QTreeView(parent), session_(session), canvas_(canvas), model_(new OutlineModel(session, this)) {
  setObjectName(QStringLiteral("outline"));
  setAccessibleName(words(text::outline_name));
  setToolTip(words(text::tip_outline));
  setModel(model_);
  setHeaderHidden(true);
  setSelectionMode(QAbstractItemView::ExtendedSelection);
  setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed);
  setExpandsOnDoubleClick(false);
  setUniformRowHeights(true);
  setIndentation(14);
  setTextElideMode(Qt::ElideNone);
  header()->setStretchLastSection(false);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  connect(&session_, &Session::lab_changed, this, &OutlineView::refresh);
  connect(&session_, &Session::exercise_changed, this, &OutlineView::refresh);
  connect(&session_, &Session::selection_changed, this, &OutlineView::follow_selection);
  connect(&session_, &Session::started, this, [this] { changed_.clear(); });
  connect(model_, &QAbstractItemModel::modelReset, this, [this] {
    refilling_ = true;
    open_below({});
    refilling_ = false;
    follow_selection();
  });
  connect(this, &QTreeView::collapsed, this, &OutlineView::note_change);
  connect(this, &QTreeView::expanded, this, &OutlineView::note_change);
}

void OutlineView::note_change(const QModelIndex& row) {
  if (refilling_ || following_) return;
  if (isExpanded(row) == model_->is_open_at_first(row))
    changed_.erase(model_->key(row));
  else
    changed_.insert(model_->key(row));
}

void OutlineView::open_below(const QModelIndex& above) {
  for (int r = 0; r < model_->rowCount(above); ++r) {
    const QModelIndex row = model_->index(r, 0, above);
    if (model_->rowCount(row) == 0) continue;
    setExpanded(row, model_->is_open_at_first(row) != changed_.contains(model_->key(row)));
    open_below(row);
  }
}

// What is not seen is read once it is.
void OutlineView::refresh() {
  stale_ = true;
  if (!isVisible()) return;
  stale_ = false;
  model_->fill();
}

void OutlineView::showEvent(QShowEvent* event) {
  QTreeView::showEvent(event);
  header()->setSectionResizeMode(QHeaderView::ResizeToContents); // measures, so not before
  if (stale_) refresh();
  follow_selection();
}

void OutlineView::follow_selection() {
  if (following_ || stale_) return;
  following_ = true;
  QItemSelection rows;
  QModelIndex first;
  for (const AnyId id : session_.selection())
    for (const QModelIndex& row : model_->rows_of(id)) {
      rows.select(row, row.siblingAtColumn(1));
      if (!first.isValid()) first = row;
    }
  selectionModel()->select(rows, QItemSelectionModel::ClearAndSelect);
  if (first.isValid()) {
    if (!session_.is_selected(model_->id(currentIndex())))
      selectionModel()->setCurrentIndex(first, QItemSelectionModel::NoUpdate);
    scrollTo(first);
  }
  following_ = false;
}

void OutlineView::selectionChanged(const QItemSelection& now, const QItemSelection& before) {
  QTreeView::selectionChanged(now, before);
  if (following_) return;
  std::vector<AnyId> ids;
  for (const QModelIndex& row : selectionModel()->selectedRows()) {
    const AnyId id = model_->id(row);
    if (id && id.kind != Kind::pc && std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  }
  following_ = true;
  session_.select(ids);
  following_ = false;
  if (ids.size() == 1) emit place_wanted(ids.front());
}

// A press on what is selected may begin a drag of all of it.
QItemSelectionModel::SelectionFlags OutlineView::selectionCommand(const QModelIndex& index,
                                                                  const QEvent* event) const {
  const bool mouse = event && (event->type() == QEvent::MouseButtonPress);
  if (mouse && selectionModel()->isSelected(index) &&
      static_cast<const QMouseEvent*>(event)->modifiers() == Qt::NoModifier)
    return QItemSelectionModel::NoUpdate;
  return QTreeView::selectionCommand(index, event);
}

void OutlineView::edit_name(AnyId id) {
  const QModelIndexList rows = model_->rows_of(id);
  if (rows.isEmpty()) return;
  setFocus();
  selectionModel()->setCurrentIndex(rows.front(), QItemSelectionModel::NoUpdate);
  edit(rows.front());
}

// The window's own F2 and Enter mean the picture; here they mean the row.
bool OutlineView::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && static_cast<QKeyEvent*>(event)->key() == Qt::Key_F2)
    event->accept();
  return QTreeView::event(event);
}

void OutlineView::contextMenuEvent(QContextMenuEvent* event) {
  const bool by_key = event->reason() == QContextMenuEvent::Keyboard;
  const QModelIndex row = by_key ? currentIndex() : indexAt(event->pos());
  const QPoint where = by_key ? viewport()->mapToGlobal(visualRect(row).center()) : event->globalPos();
  emit menu_wanted(model_->id(row), where);
}

void OutlineView::paintEvent(QPaintEvent* event) {
  QTreeView::paintEvent(event);
  if (!dragging_ || !aim_.row.isValid()) return;
  QRect box = visualRect(aim_.row.siblingAtColumn(0)).united(visualRect(aim_.row.siblingAtColumn(1)));
  box.setRight(viewport()->width() - 1);
  QPainter painter(viewport());
  painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
  const int y = aim_.side < 0 ? box.top() + 1 : box.bottom() - 1;
  if (aim_.side == 0)
    painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 5, 5);
  else
    painter.drawLine(box.left(), y, box.right(), y);
}

} // namespace snug
