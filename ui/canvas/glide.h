#pragma once
// A short movement from one picture to the next, so that eyes can follow what went where. None where the
// desktop asks for no animations.

#include "core/layout/drawing.h"

#include <QObject>
#include <QVariantAnimation>

class QWidget;

namespace snug {

class Glide : public QObject {
 public:
  explicit Glide(QWidget& view); // is painted anew with every step
  void start(Drawing from, Drawing to);
  void stop();
  // What to paint meanwhile; null: nothing moves.
  const Drawing* shown() const { return run_.state() == QAbstractAnimation::Running ? &now_ : nullptr; }

 private:
  void step(int permille);

  QWidget& view_;
  QVariantAnimation run_;
  Drawing from_, to_, now_;
};

} // namespace snug
