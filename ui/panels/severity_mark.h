#pragma once
// The mark of a severity as on the picture: colour, shape and letter.

#include "core/findings/finding.h"
#include "core/layout/palette.h"

#include <QIcon>
#include <QWidget>

namespace snug {

QIcon severity_icon(Severity severity, const Palette& palette);

class SeverityMark : public QWidget {
 public:
  SeverityMark(Severity severity, const Palette& palette, QWidget* parent = nullptr);

 protected:
  void paintEvent(QPaintEvent*) override;

 private:
  Severity severity_;
  const Palette& palette_;
};

} // namespace snug
