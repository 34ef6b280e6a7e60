#pragma once
// What stands beside the menus: the box to find with, and buttons for what the menus hold too. Where the
// window is too narrow for all, buttons go one after the other, then the box becomes shorter.

#include <QWidget>

#include <vector>

class QAction;
class QHBoxLayout;
class QMenuBar;
class QToolButton;

namespace snug {

class MenuCorner : public QWidget {
  Q_OBJECT

 public:
  MenuCorner(QMenuBar& menus, QWidget& find);
  // `place`: 0 goes last.
  QToolButton* add(QAction& action, int place);

 protected:
  bool eventFilter(QObject* of, QEvent* event) override;
  bool event(QEvent* event) override;

 private:
  void fit();
  int menus_width();
  struct Button {
    QToolButton* button;
    int place;
  };
  QMenuBar& menus_;
  QWidget& find_;
  QHBoxLayout* row_;
  int find_width_, widest_ = 0;
  std::vector<Button> buttons_;
};

} // namespace snug
