#pragma once
// Who can talk to whom: a question, its answer hop by hop, and the promises that are watched. While something
// is dragged it shows how it would be after the drop.

#include "core/layout/palette.h"
#include "ui/session/session.h"

#include <QWidget>

class QPushButton;

namespace snug {

class PromiseView;
class ReachAnswerView;
class ReachQuestionBar;
struct ShownAnswer;

class ReachPanel : public QWidget {
  Q_OBJECT

 public:
  explicit ReachPanel(Session& session, QWidget* parent = nullptr);
  void set_theme(Theme theme);
  // Puts a question to it.
  void ask(const ReachQuestion&);
  void ask(AnyId from, AnyId to);
  void show_promise(PromiseId id);
  const ShownAnswer& answer() const;
  PromiseView& promises() const { return *promises_; }

 signals:
  void place_wanted(snug::AnyId id);
  // What the answer passes, to be marked on the picture, and where it ends (none: it reaches).
  void way_changed(const std::vector<snug::AnyId>& passed, snug::AnyId end);
  void change_wanted(snug::PromiseId id);
  void finding_wanted(const QString& rule, snug::PromiseId id);

 protected:
  void showEvent(QShowEvent*) override;
  void hideEvent(QHideEvent*) override;

 private:
  QWidget* make_promises();
  void refresh();
  void answer_question();
  void show_answer(ShownAnswer);
  void promise_answer();
  void promise_anything();
  void take(const Edit&, AnyId made);

  Session& session_;
  ReachQuestionBar* question_;
  ReachAnswerView* answer_;
  PromiseView* promises_;
  QPushButton* stays_;
  QPushButton* add_;
  Reached verdict_ = Reached::does_not_reach; // of the question, now
  bool stale_ = true;
};

} // namespace snug
