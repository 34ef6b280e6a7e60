#pragma once
// Rows of the panels below: they can be pressed and reached by Tab.

#include <QFrame>
#include <QLabel>

#include <functional>

class QLineEdit;
class QScrollArea;
class QVBoxLayout;

namespace snug {

class PanelRow : public QFrame {
 public:
  // `name`: object name, by which the style sheet knows it. Enter, Space and a click call `go`.
  PanelRow(QWidget* parent, const QString& name, std::function<void()> go);

 protected:
  void mouseReleaseEvent(QMouseEvent*) override;
  void keyPressEvent(QKeyEvent*) override;

 private:
  std::function<void()> go_;
};

// After a property has changed that the style sheet asks for.
void wear_again(QWidget&);
// In the error's colour; `tip`: why, or what the line is for.
void set_bad(QLineEdit&, bool bad, const QString& tip);

// Text that is never read as markup. `tone` as in the style sheet: "heading", "muted"; empty: plain.
QLabel* wrapped_text(const QString& text, const char* tone, QWidget* parent);
// Above a list: begins with a capital.
QLabel* heading(const QString& text, QWidget* parent);

// Scrolls up and down only. Focus goes to what is inside, unless there is nothing that takes it.
QScrollArea* scrolled(QWidget* inside, QWidget* parent, Qt::FocusPolicy focus = Qt::NoFocus);

// A new column of rows at the top of a view that has no other layout; `body`, the one before, goes.
QVBoxLayout& renew_rows(QWidget& view, QWidget*& body);

} // namespace snug
