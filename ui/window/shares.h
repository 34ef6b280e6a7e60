#pragma once
// How picture, panels below it, title and exercises share the window.

#include "ui/window/settings.h"

#include <QObject>

#include <vector>

class QPushButton;
class QSplitter;
class QTabWidget;
class QWidget;

namespace snug {

class ExerciseStrip;

class Shares : public QObject {
 public:
  static constexpr int kUnfolds = 880; // from this height of the window on the panels are open by themselves

  // `down` has the picture above the panels, `large` is one of `tabs` that needs more than the others, `top`
  // has title and exercises beside each other.
  struct Parts {
    QSplitter& down;
    QTabWidget& tabs;
    QWidget& large;
    QWidget& top;
    QWidget& title;
    ExerciseStrip& exercises;
  };
  Shares(const Parts& parts, QObject* parent);
  // Beside the names of the tabs while that one is open.
  void set_tools(int tab, QWidget& tools);
  // Of the panels, as a person pulled it; 0: nobody did, they follow the window.
  int pulled() const { return pulled_; }
  void pull(int height);
  // Only the names of the tabs stand below the picture.
  bool is_folded() const { return folded_; }
  Folded folded_by_person() const { return by_person_; }
  void fold(Folded wish);
  // Opens a tab, as a person asked.
  void show(int tab);
  // The title goes where that makes one line of the exercises: the window's own title has it too.
  void fit_title();

 protected:
  bool eventFilter(QObject*, QEvent*) override;

 private:
  void follow_window();
  void set_folded(bool folded);
  void press_tab(int tab);
  void share_height();
  void show_tools();
  void place_tools();

  Parts parts_;
  QWidget* beside_; // the tabs' names
  QPushButton* turn_;
  std::vector<QWidget*> tools_; // by tab; null: none
  int pulled_ = 0;
  bool folded_ = false;
  Folded by_person_ = Folded::by_width;
};

} // namespace snug
