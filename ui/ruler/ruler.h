#pragma once
// The PC's memory to scale over the canvas. A block's right edge is dragged to change the machine's memory.

#include "core/layout/draw.h"
#include "core/layout/palette.h"
#include "ui/session/session.h"

#include <QWidget>

namespace snug {

class Ruler : public QWidget {
  Q_OBJECT

 public:
  explicit Ruler(Session& session, QWidget* parent = nullptr);
  void set_theme(Theme theme);
  const Drawing& drawing() const { return drawing_; }
  // Shows over the bar what another exercise takes; nothing: no other.
  void compare_with(std::optional<ExerciseId> other);
  std::optional<ExerciseId> compared() const { return beside_; }
  // The same for as long as somebody looks at another exercise.
  void glance_at(std::optional<ExerciseId> other);
  // What a block says: memory, what it takes, what of that is expected to be used.
  QString block_words(MachineId) const;
  // Of a machine's block; empty: it is off or not on the PC itself.
  QRect block(MachineId) const;

 protected:
  void paintEvent(QPaintEvent*) override;
  void resizeEvent(QResizeEvent*) override;
  void mousePressEvent(QMouseEvent*) override;
  void mouseMoveEvent(QMouseEvent*) override;
  void mouseReleaseEvent(QMouseEvent*) override;
  void keyPressEvent(QKeyEvent*) override;
  bool event(QEvent*) override;

 private:
  void redraw();
  std::vector<QRect> marks() const; // around blocks of what is chosen
  MachineId at(QPoint) const;
  MachineId edge_at(QPoint) const;
  Edit edit_at(int x) const;

  Session& session_;
  Drawing drawing_;
  Theme theme_ = Theme::light;
  std::optional<ExerciseId> beside_, glance_;
  std::vector<QRect> marked_; // as they were painted last
  MachineId dragged_;
  int pressed_x_ = 0;
  std::int64_t memory_ = 0, scale_ = 1; // when the drag began
};

} // namespace snug
