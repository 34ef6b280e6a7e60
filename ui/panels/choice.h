#pragma once
// A list to choose from, in a panel that scrolls: the wheel is the panel's, it never changes the choice.

#include <QComboBox>
#include <QWheelEvent>

namespace snug {

class Choice : public QComboBox {
 public:
  using QComboBox::QComboBox;

 protected:
  void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

} // namespace snug
