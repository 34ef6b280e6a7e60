#include "ui/panels/reach_panel.h"

#include "core/gesture/promise.h"
#include "core/text/reach_panel_text.h"
#include "core/text/tip_text.h"
#include "ui/panels/panel_row.h"
#include "ui/panels/promise_view.h"
#include "ui/panels/reach_answer.h"
#include "ui/panels/reach_question.h"
#include "ui/session/words.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace snug {

ReachPanel::ReachPanel(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("reach"));
  auto* box = new QVBoxLayout(this);
  box->setContentsMargins(10, 8, 4, 8);
  box->setSpacing(6);
  question_ = new ReachQuestionBar(session, this);
  answer_ = new ReachAnswerView(session);
  promises_ = new PromiseView(session);
  box->addWidget(question_);
  auto* across = new QHBoxLayout;
  across->setSpacing(14);
  across->addWidget(scrolled(answer_, this), 1);
  across->addWidget(make_promises(), 1);
  box->addLayout(across, 1);
  connect(question_, &ReachQuestionBar::asked, this, &ReachPanel::answer_question);
  connect(question_, &ReachQuestionBar::asked, &session_, &Session::moved_on);
  connect(answer_, &ReachAnswerView::place_wanted, this, &ReachPanel::place_wanted);
  connect(promises_, &PromiseView::asked, this, qOverload<const ReachQuestion&>(&ReachPanel::ask));
  connect(promises_, &PromiseView::change_wanted, this, &ReachPanel::change_wanted);
  connect(promises_, &PromiseView::finding_wanted, this, &ReachPanel::finding_wanted);
  connect(&session_, &Session::shown_changed, this, &ReachPanel::refresh);
  connect(&session_, &Session::selection_changed, this, &ReachPanel::refresh);
  refresh();
}

QWidget* ReachPanel::make_promises() {
  auto* side = new QWidget(this);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  auto* top = new QHBoxLayout;
  top->setContentsMargins(0, 0, 6, 0);
  auto* title = new QLabel(words(text::promises_title), side);
  title->setProperty("tone", QStringLiteral("heading"));
  top->addWidget(title);
  top->addStretch();
  stays_ = new QPushButton(words(text::answer_promise), side);
  stays_->setObjectName(QStringLiteral("promise_answer"));
  stays_->setProperty("role", QStringLiteral("small"));
  stays_->setToolTip(words(text::tip_promise_answer));
  add_ = new QPushButton(words(text::promises_add), side);
  add_->setObjectName(QStringLiteral("add_promise"));
  add_->setProperty("role", QStringLiteral("small"));
  add_->setToolTip(words(text::tip_add_promise));
  top->addWidget(stays_);
  top->addWidget(add_);
  column->addLayout(top);
  column->addWidget(scrolled(promises_, side), 1);
  connect(stays_, &QPushButton::clicked, this, &ReachPanel::promise_answer);
  connect(add_, &QPushButton::clicked, this, &ReachPanel::promise_anything);
  return side;
}

const ShownAnswer& ReachPanel::answer() const { return answer_->answer(); }

void ReachPanel::set_theme(Theme theme) {
  answer_->set_theme(theme);
  promises_->set_theme(theme);
}

void ReachPanel::ask(const ReachQuestion& q) { question_->ask(q); }

void ReachPanel::ask(AnyId from, AnyId to) {
  ReachQuestion q;
  q.from = from;
  q.to = to;
  ask(q);
}

void ReachPanel::show_promise(PromiseId id) {
  if (!exists(session_.lab(), id)) return;
  session_.select({id});
  promises_->focus_promise(id);
}

void ReachPanel::showEvent(QShowEvent*) {
  if (stale_) refresh();
}

void ReachPanel::hideEvent(QHideEvent*) {
  stale_ = true;
  emit way_changed({}, {});
}

// Only while somebody looks: it asks the network of the state that is shown.
void ReachPanel::refresh() {
  stale_ = !isVisible();
  if (stale_) return;
  answer_question();
  promises_->show_promises(session_.shown());
}

void ReachPanel::answer_question() {
  stays_->setEnabled(question_->question().has_value());
  add_->setEnabled(question_->question().has_value());
  if (!question_->question()) return show_answer({Mark::none, {}, words(text::ask_nobody), {}, {}});
  const ReachQuestion& q = *question_->question();
  stays_->setEnabled(q.from != q.to);
  if (q.from == q.to) return show_answer({Mark::none, {}, words(text::answer_self), {}, {}});
  const Analysis& shown = session_.shown();
  const ReachAnswer answer = shown.reach(session_.exercise()).ask(q);
  verdict_ = answer.verdict;
  ShownAnswer next = answer_of(shown, session_.exercise(), q, answer);
  if (session_.is_previewing()) next.sentence = words(text::answer_of_drop, next.sentence.toStdString());
  show_answer(std::move(next));
  const bool half = verdict_ == Reached::one_way || verdict_ == Reached::unreliable;
  stays_->setText(words(half ? text::answer_promise_must : text::answer_promise));
}

void ReachPanel::show_answer(ShownAnswer next) {
  std::vector<AnyId> passed;
  for (const HopLine& line : next.way) passed.insert(passed.end(), line.places.begin(), line.places.end());
  const AnyId end = next.end && !next.end->places.empty() ? next.end->places.front() : AnyId{};
  answer_->show_answer(std::move(next));
  emit way_changed(passed, end);
}

void ReachPanel::promise_answer() {
  if (!question_->question()) return;
  const auto added = promise_that(session_.lab(), *question_->question(), verdict_, session_.exercise());
  if (!added) return session_.tell(added.error());
  take(added->edit, added->id);
  if (question_->question()->target)
    session_.tell(Notice::Kind::told,
                  words(text::promise_any_address, name_of(session_.lab(), question_->question()->to)));
}

void ReachPanel::promise_anything() {
  if (!question_->question()) return;
  const auto added = add_promise(session_.lab(), *question_->question(), session_.exercise());
  if (!added) return session_.tell(added.error());
  take(added->edit, added->id);
  emit change_wanted({added->id.number});
}

void ReachPanel::take(const Edit& edit, AnyId made) {
  session_.seal();
  if (!session_.perform(edit)) return;
  session_.select({made});
  promises_->reveal({made.number});
}

} // namespace snug
