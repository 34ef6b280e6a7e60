#pragma once
// A line over the canvas in which a name or an address is typed. Enter takes it, Esc leaves it as it was.

#include "ui/canvas/canvas.h"

#include <QLineEdit>

namespace snug {

class InPlace : public QLineEdit {
  Q_OBJECT

 public:
  explicit InPlace(Canvas& canvas);
  // The name of a machine, segment, LAN or the PC; of a card its first address.
  void edit(AnyId);

 protected:
  void keyPressEvent(QKeyEvent*) override;
  void focusOutEvent(QFocusEvent*) override;

 private:
  Result<Edit> wish() const;
  void judge();
  void take();

  Canvas& canvas_;
  AnyId id_;
};

} // namespace snug
