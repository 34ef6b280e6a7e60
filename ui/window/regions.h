#pragma once
// F6 and Shift+F6 go round the regions of the window, each time to where the keyboard was in it last.

#include <QObject>
#include <QPointer>

#include <vector>

class QMainWindow;
class QMenu;
class QWidget;

namespace snug {

class Regions : public QObject {
  Q_OBJECT

 public:
  // In the order of going round. The two actions are added to the menu.
  Regions(QMainWindow& window, QMenu& menu, const std::vector<QWidget*>& regions);

  void step(int by); // 1: to the next, -1: to the one before; hidden ones are passed over

 private:
  struct Region {
    QPointer<QWidget> widget, last;
  };
  int current() const; // -1: none
  bool enter(Region& region);
  void remember(QWidget* now);

  QMainWindow& window_;
  std::vector<Region> regions_;
};

} // namespace snug
