#pragma once
// A button of the parts: it is dragged off, or clicked and then placed, or placed by the keyboard.

#include "ui/canvas/canvas.h"

#include <QPushButton>

#include <functional>
#include <memory>

namespace snug {

class PartButton : public QPushButton {
  Q_OBJECT

 public:
  using Make = std::function<std::unique_ptr<Gesture>()>;
  PartButton(Canvas& canvas, Make make, QWidget* parent);

 protected:
  void showEvent(QShowEvent*) override;
  void mousePressEvent(QMouseEvent*) override;
  void mouseMoveEvent(QMouseEvent*) override;
  void mouseReleaseEvent(QMouseEvent*) override;
  void keyPressEvent(QKeyEvent*) override;

 private:
  Canvas& canvas_;
  Make make_;
  QPoint pressed_at_;
  bool dragging_ = false;
  bool by_key_ = false; // it is pressed by the keyboard
};

} // namespace snug
