#pragma once
// A hand on the window: real mouse events at places of the drawing.

#include "ui/canvas/canvas.h"
#include "ui/window/main_window.h"

#include <QString>

namespace snug::test {

// Until what is filled after the first picture is there and the picture has its place.
void settle(MainWindow& window);

class Hand {
 public:
  explicit Hand(MainWindow& window);

  MainWindow& window() { return window_; }
  Session& session() { return window_.session(); }
  const Lab& lab() { return window_.session().lab(); }

  MachineId machine(std::string_view name);
  SegmentId segment(std::string_view name);
  // Middle of an element's box on the viewport; of a machine a place in its upper left where no guest is.
  QPoint on(AnyId id);
  // Where a card's pin is.
  QPoint pin(CardId card);
  // A point on a segment's rail, right of its name.
  QPoint rail(SegmentId segment);

  void click(QPoint at, Qt::KeyboardModifiers keys = {});
  void press(QPoint at);
  void move(QPoint to); // in steps
  void hover(QPoint at);
  void release(QPoint at);
  void drag(QPoint from, QPoint to);
  void key(Qt::Key key, Qt::KeyboardModifiers keys = {});

  // Texts of the drawing that belong to an element.
  QString texts(AnyId id);

 private:
  MainWindow& window_;
  QPoint at_;
};

} // namespace snug::test
