#pragma once
// One side of the window: a strip of upright tabs at its outer edge and beside it the panel that was chosen,
// or none: then the picture has the room.

#include <QFrame>

#include <vector>

class QAbstractButton;
class QBoxLayout;
class QStackedWidget;

namespace snug {

class FoldingSide : public QFrame {
  Q_OBJECT

 public:
  enum class Edge { left, right };
  explicit FoldingSide(Edge edge, QWidget* parent = nullptr);

  // `width`: of the panel as it is opened at first, pixels.
  void add(QWidget* panel, const QString& title, const QString& help, int width);
  // Of the panel that is open; -1: none.
  int open() const;
  void open(int panel);
  void fold();
  // Opens the panel that was open last.
  void unfold();
  QAbstractButton* tab(int panel) const { return tabs_[static_cast<std::size_t>(panel)]; }
  // Of the strip and of the panel that is open, as it was pulled last.
  int wanted_width() const;
  void pulled(int width); // what is open, by a person, with the strip
  // Of a panel, with the strip, whether it is open or not.
  int width_of(int panel) const;
  void set_width(int panel, int width);

 signals:
  void turned();                  // another panel is open, or none
  void chosen_by_person(bool on); // by a click or a key on a tab

 private:
  void show_tabs();

  QBoxLayout* strip_;
  QStackedWidget* panels_;
  std::vector<QAbstractButton*> tabs_;
  std::vector<int> widths_; // of the panels
};

} // namespace snug
