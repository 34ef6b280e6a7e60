#pragma once
// The answer to a question about reach: a mark, a sentence, and the way hop by hop, where it ends first.

#include "core/layout/palette.h"
#include "core/reach/reach.h"
#include "ui/panels/verdict_mark.h"
#include "ui/session/session.h"

#include <QWidget>

class QVBoxLayout;

namespace snug {

struct HopLine {
  QString text;
  std::vector<AnyId> places; // the system, then its card, segment or LAN
  bool back = false;
  friend bool operator==(const HopLine&, const HopLine&) = default;
};
// What is shown; equal ones need no new widgets.
struct ShownAnswer {
  Mark mark = Mark::none;
  QString verdict, sentence;
  std::optional<HopLine> end;
  std::vector<HopLine> way;
  friend bool operator==(const ShownAnswer&, const ShownAnswer&) = default;
};
ShownAnswer answer_of(const Analysis&, ExerciseId, const ReachQuestion&, const ReachAnswer&);

class ReachAnswerView : public QWidget {
  Q_OBJECT

 public:
  explicit ReachAnswerView(Session& session, QWidget* parent = nullptr);
  void set_theme(Theme theme);
  void show_answer(ShownAnswer answer);
  const ShownAnswer& answer() const { return answer_; }

 signals:
  void place_wanted(snug::AnyId id);

 private:
  void rebuild();
  void add_verdict(QVBoxLayout&);
  void add_hops(QVBoxLayout&);
  void add_hop(QVBoxLayout&, const HopLine&, int number); // 0: where it ends
  void go(const std::vector<AnyId>& places);

  Session& session_;
  Theme theme_ = Theme::light;
  ShownAnswer answer_;
  QWidget* body_ = nullptr;
};

} // namespace snug
