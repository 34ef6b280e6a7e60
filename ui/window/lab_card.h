#pragma once
// A lab on the start page: a small picture drawn from the lab itself, its title, how large it is.

#include "core/layout/draw.h"
#include "core/model/lab.h"

#include <QPushButton>

namespace snug {

class LabCard : public QPushButton {
  Q_OBJECT

 public:
  LabCard(const Lab& lab, const QString& title, QWidget* parent = nullptr);
  const Drawing& drawing() const { return drawing_; }
  // The title in at most two lines; what is longer ends with an ellipsis.
  QStringList title_lines() const;

 protected:
  void paintEvent(QPaintEvent*) override;

 private:
  QString title_, about_;
  Drawing drawing_;
};

} // namespace snug
