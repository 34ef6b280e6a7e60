#pragma once
// Sentences over the canvas: what failed and what to do, without stopping anybody.

#include "ui/session/session.h"

#include <QFrame>

#include <functional>

class QPushButton;
class QVBoxLayout;

namespace snug {

class NoticeBar : public QWidget {
  Q_OBJECT

 public:
  // It lies over what is in its parent and moves nothing.
  explicit NoticeBar(QWidget* parent = nullptr);
  // Above the upper edge of the first of these that is seen.
  void float_above(std::vector<QWidget*> feet);
  struct Choice {
    QString words;
    std::function<void()> act;
  };
  // What is said stays until it is closed, a choice is taken, it is old, or the next sentence.
  void show_notice(const Notice& notice, const std::vector<Choice>& choices = {});
  // A question stays beside what is said later, until it is answered or withdrawn; one of a topic.
  void ask(const QString& topic, const Notice& notice, const std::vector<Choice>& choices);
  // Asks for a line of text: Enter takes it, Esc leaves it. What is refused stays there to be mended.
  struct Line {
    QString text, name, help, accept; // accept: the words of the button
    std::function<bool(const QString&)> take;
  };
  void ask_line(const QString& topic, const Notice& notice, const Line& line);
  void withdraw(const QString& topic);
  void outdate(Notice::Until happened); // takes away what that makes old; another lab all but `never`
  QString text() const;                 // of all, one a line, the newest first
  void copy() const;                    // that, onto the clipboard

  bool eventFilter(QObject* watched, QEvent* event) override;

 signals:
  void changed(); // what is said
  void left();    // what had the keyboard is gone

 private:
  void place();
  void withdraw_if(const std::function<bool(const QWidget& row)>& goes);
  QFrame* add(const QString& topic, const Notice& notice, const std::vector<Choice>& choices);
  QPushButton* add_button(QFrame& row, const Choice& choice, const QString& help);
  QVBoxLayout* rows_;
  std::vector<QWidget*> feet_;
};

} // namespace snug
