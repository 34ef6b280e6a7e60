#pragma once
// How picture, panels, title and exercises share the window.

#include <QObject>

#include <vector>

class QLabel;
class QSplitter;
class QTabWidget;
class QWidget;

namespace snug {

class ExerciseStrip;

class Shares : public QObject {
 public:
  // `down` has the picture above the panels, `reach` is one of `tabs`, `top` has title and exercises beside
  // each other.
  struct Parts {
    QSplitter& down;
    QTabWidget& tabs;
    QWidget& reach;
    std::vector<QWidget*> tools; // of each tab, beside their names; null: none
    QWidget& top;
    QLabel& title;
    ExerciseStrip& exercises;
  };
  Shares(const Parts& parts, QObject* parent);
  // Of the panels, as a person pulled it; 0: nobody did, they follow the window.
  int pulled() const { return pulled_; }
  void pull(int height);
  // The title goes where that makes one line of the exercises: the window's own title has it too.
  void fit_title();

 protected:
  bool eventFilter(QObject*, QEvent*) override;

 private:
  void share_height();
  void show_tools();
  void place_tools();

  Parts parts_;
  QWidget* beside_; // the tabs' names
  int pulled_ = 0;
};

} // namespace snug
