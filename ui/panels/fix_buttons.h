#pragma once
// The buttons that repair findings. Whether a repair holds is found by trying it on a copy of the lab, so
// rows stand before their buttons: those that are seen get theirs first, one in a turn of the event loop,
// none during a drag.

#include "core/findings/rule.h"
#include "ui/session/session.h"

#include <QElapsedTimer>
#include <QPointer>
#include <QTimer>
#include <QWidget>

#include <functional>

class QPushButton;

namespace snug {

class FixButtons : public QObject {
 public:
  FixButtons(Session& session, QObject* parent);
  // Before `next` in the layout of `row`. The finding is one of the session's analysis. The first of a rule
  // that holds several times gets a button for all of them as well.
  void want(QWidget* row, QWidget* next, const Finding& finding);
  // Of rows that go, or an analysis that goes.
  void forget();
  bool is_done() const { return wanted_.empty(); }
  // How often a repair was asked for.
  std::int64_t asked() const { return asked_; }

 private:
  struct Wanted {
    QPointer<QWidget> row, next;
    const Finding* finding;
  };
  void step();
  void add(const Wanted&);
  void on_press(QPushButton& button, std::function<void()> repair);
  QPushButton* make_button(const Fix&, QWidget& row);
  QPushButton* make_all(const Rule&, std::size_t count, QWidget& row);
  void repair(std::string_view rule, std::size_t count);

  Session& session_;
  QTimer timer_;
  std::vector<Wanted> wanted_;
  std::vector<const Rule*> all_; // that have a button for all of them
  QElapsedTimer last_;           // since the last repair, unless the lab has changed after it
  bool by_mouse_ = false;        // the button that is pressed
  std::int64_t asked_ = 0;
};

} // namespace snug
