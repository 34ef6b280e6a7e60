#pragma once
// One button an exercise with how it stands: everything on first, then the lab's exercises.

#include "core/layout/palette.h"
#include "ui/session/session.h"

#include <QWidget>

class QPushButton;

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
  // Tips stand below this widget, which shows what they speak of. It outlives the strip's tips.
  void keep_clear(const QWidget& widget) { kept_clear_ = &widget; }

 protected:
  void resizeEvent(QResizeEvent*) override;

 signals:
  // The pointer or the keyboard is on one; nothing: on none.
  void looked_at(std::optional<snug::ExerciseId> id);
  void add_wanted();
  void menu_wanted(snug::AnyId id, const QPoint& global);

 private:
  void fill();
  void add_plus();
  QPoint below_all(QPoint pointer) const;
  void refresh();
  void keep_widths();
  QString name_in_button(ExerciseId) const;
  void show(const ExerciseStanding&, VerdictButton&);
  void say(VerdictButton&, const QString& name_in_button, const QString& word);
  Session& session_;
  Theme theme_ = Theme::light;
  FlowLayout* box_;
  QPushButton* add_ = nullptr;
  const QWidget* kept_clear_ = nullptr;
  std::vector<std::pair<ExerciseId, VerdictButton*>> buttons_;
};

} // namespace snug
