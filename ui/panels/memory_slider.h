#pragma once
// A machine's memory as a slider with the marks of its role: what it needs at least, and usually.

#include "ui/session/session.h"

#include <QSlider>

namespace snug {

class MemorySlider : public QSlider {
 public:
  explicit MemorySlider(Session& session, QWidget* parent = nullptr);
  void show_machine(MachineId);
  // Where a value stands, in pixels of the widget.
  int x_of(std::int64_t mib) const;

 protected:
  void paintEvent(QPaintEvent*) override;
  void mousePressEvent(QMouseEvent*) override;
  void mouseMoveEvent(QMouseEvent*) override;
  void mouseReleaseEvent(QMouseEvent*) override;
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 private:
  void take(int steps);
  void go_to(qreal x);

  Session& session_;
  MachineId machine_;
  std::int64_t least_ = 0, usual_ = 0; // MiB; 0: no role
  qreal grip_ = 0;                     // of the hand, right of the handle's middle
  bool filling_ = false;
};

} // namespace snug
