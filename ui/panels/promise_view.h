#pragma once
// The lab's promises: what each says, whether it is kept in the exercise shown and why, and in which others.

#include "core/layout/palette.h"
#include "core/report/promise_list.h"
#include "ui/session/session.h"

#include <QWidget>

class QPushButton;
class QVBoxLayout;

namespace snug {

class PromiseView : public QWidget {
  Q_OBJECT

 public:
  explicit PromiseView(Session& session, QWidget* parent = nullptr);
  void set_theme(Theme theme);
  void show_promises(const Analysis&);
  // Brings the row of a promise into sight, where it is shown.
  void reveal(PromiseId id);
  // The same, and the row gets the keyboard focus.
  void focus_promise(PromiseId id);
  int shown_count() const { return static_cast<int>(rows_.size()); }

 signals:
  void asked(const snug::ReachQuestion& q); // the pair that decides a promise
  void change_wanted(snug::PromiseId id);
  void finding_wanted(const QString& rule, snug::PromiseId id);

 private:
  struct Row { // as it is shown
    PromiseId id;
    Kept now = Kept::not_judged;
    QString says, why, elsewhere, rule;
    bool chosen = false;
    std::optional<ReachQuestion> decides;
    bool same_words(const Row&) const;
  };
  void rebuild();
  QWidget* row_of(const Row&);
  void add_buttons(const Row&, QWidget* frame);
  void press(PromiseId id);

  Session& session_;
  Theme theme_ = Theme::light;
  std::vector<Row> rows_;
  int beyond_ = 0; // not shown
  QWidget* body_ = nullptr;
};

} // namespace snug
