#pragma once
// The outline under the hand: what is selected here is selected everywhere; rows are dragged onto others, or
// onto the picture.

#include "ui/canvas/canvas.h"
#include "ui/outline/outline_model.h"

#include <QTreeView>

#include <set>

namespace snug {

class OutlineView : public QTreeView {
  Q_OBJECT

 public:
  OutlineView(Session& session, Canvas& canvas, QWidget* parent = nullptr);

  OutlineModel& outline() { return *model_; }
  bool is_dragging() const { return dragging_; }
  // Opens the line for an element's name.
  void edit_name(AnyId id);

 signals:
  void menu_wanted(snug::AnyId id, const QPoint& global);
  void place_wanted(snug::AnyId id);
  // What a drop here would bring, or why it is refused; empty: nothing to say.
  void said(const QString& words, bool refused);

 protected:
  void mousePressEvent(QMouseEvent*) override;
  void mouseMoveEvent(QMouseEvent*) override;
  void mouseReleaseEvent(QMouseEvent*) override;
  void keyPressEvent(QKeyEvent*) override;
  void contextMenuEvent(QContextMenuEvent*) override;
  void paintEvent(QPaintEvent*) override;
  void showEvent(QShowEvent*) override;
  bool event(QEvent*) override;
  void selectionChanged(const QItemSelection& now, const QItemSelection& before) override;
  QItemSelectionModel::SelectionFlags selectionCommand(const QModelIndex&, const QEvent*) const override;

 private:
  struct Aim {
    QModelIndex row;
    int side = 0; // -1: before it, 1: behind it, 0: into it
    friend bool operator==(const Aim&, const Aim&) = default;
  };
  void refresh();
  void open_below(const QModelIndex& above);
  void note_change(const QModelIndex& row);
  void follow_selection();
  void begin_drag();
  Aim aim_at(QPoint at) const;
  std::optional<Result<Edit>> edit_for(const Aim&) const; // nothing: no aim
  Result<Edit> move_to(const Aim&) const;
  void show_aim(const Aim&);
  void end_drag(bool drop);

  Session& session_;
  Canvas& canvas_;
  OutlineModel* model_;
  std::set<std::uint64_t> changed_; // opened or closed by the person
  bool stale_ = true, following_ = false, dragging_ = false, may_drag_ = false, refilling_ = false;
  QPoint pressed_at_;
  std::vector<AnyId> held_;
  Aim aim_;
};

} // namespace snug
