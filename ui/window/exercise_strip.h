#pragma once
// One button an exercise with how it stands: everything on first, then the lab's exercises.

#include "core/layout/palette.h"
#include "ui/session/session.h"

#include <QWidget>

namespace snug {

class FlowLayout;
class VerdictButton;
struct ExerciseStanding;

class ExerciseStrip : public QWidget {
  Q_OBJECT

 public:
  explicit ExerciseStrip(Session& session, QWidget* parent = nullptr);
  ~ExerciseStrip() override;
  void set_theme(Theme theme);
  int line_width() const; // of all of them beside each other

 signals:
  // The pointer or the keyboard is on one; nothing: on none.
  void looked_at(std::optional<snug::ExerciseId> id);

 private:
  void fill();
  void refresh();
  void show(const ExerciseStanding&, VerdictButton&);
  Session& session_;
  Theme theme_ = Theme::light;
  FlowLayout* box_;
  std::vector<std::pair<ExerciseId, VerdictButton*>> buttons_;
};

} // namespace snug
