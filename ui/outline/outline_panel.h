#pragma once
// The outline with a line below it that says what a drop would bring.

#include "ui/outline/outline_view.h"

class QLabel;

namespace snug {

class OutlinePanel : public QWidget {
  Q_OBJECT

 public:
  OutlinePanel(Session& session, Canvas& canvas, QWidget* parent = nullptr);

  OutlineView& view() { return *view_; }
  QString said() const;

 private:
  OutlineView* view_;
  QLabel* says_;
};

} // namespace snug
