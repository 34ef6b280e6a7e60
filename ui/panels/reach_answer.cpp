#include "ui/panels/reach_answer.h"

#include "core/reach/explain.h"
#include "core/report/reach_step.h"
#include "core/text/reach_panel_text.h"
#include "core/text/tip_text.h"
#include "ui/panels/panel_row.h"
#include "ui/session/words.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace snug {

namespace {

constexpr int kNumberWidth = 20;

std::pair<Mark, const Template*> verdict_of(Reached r) {
  switch (r) {
  case Reached::reaches:
    return {Mark::yes, &text::answer_reaches};
  case Reached::one_way:
    return {Mark::one_way, &text::answer_one_way};
  case Reached::unreliable:
    return {Mark::chance, &text::answer_unreliable};
  default:
    return {Mark::no, &text::answer_no};
  }
}

HopLine line_of(const Analysis& a, const ReachStep& s) {
  HopLine line{words(step_message(a, s)), {}, s.back};
  for (const AnyId id : {s.node, s.card})
    if (id.kind != Kind::outside && exists(a.lab(), id) &&
        std::find(line.places.begin(), line.places.end(), id) == line.places.end())
      line.places.push_back(id);
  const Card* card = s.card.kind == Kind::card ? find<Card>(a.lab(), CardId{s.card.number}) : nullptr;
  if (card && card->segment) line.places.emplace_back(card->segment); // the rail it goes along
  return line;
}

} // namespace

ShownAnswer answer_of(const Analysis& a, ExerciseId exercise, const ReachQuestion& q, const ReachAnswer& r) {
  ShownAnswer out;
  const auto [mark, word] = verdict_of(r.verdict);
  out.mark = mark;
  out.verdict = words(*word);
  out.sentence = words(explain(a.index(), a.reach(exercise), q, r));
  for (const ReachStep& s : r.steps) out.way.push_back(line_of(a, s));
  if (r.end) {
    out.end = line_of(a, *r.end);
    if (!r.steps.empty() && r.steps.back() == *r.end) out.way.pop_back();
  }
  return out;
}

ReachAnswerView::ReachAnswerView(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("reach_answer"));
}

void ReachAnswerView::set_theme(Theme theme) {
  theme_ = theme;
  rebuild();
}

void ReachAnswerView::show_answer(ShownAnswer answer) {
  if (body_ && answer == answer_) return;
  answer_ = std::move(answer);
  rebuild();
}

// Where the focus was among the hops, it is on the first one afterwards.
void ReachAnswerView::rebuild() {
  const QWidget* now = window()->focusWidget();
  const bool focused = body_ && now && body_->isAncestorOf(now);
  QVBoxLayout& column = renew_rows(*this, body_);
  add_verdict(column);
  add_hops(column);
  body_->show();
  if (!focused) return;
  if (auto* hop = body_->findChild<QWidget*>(QStringLiteral("hop"))) hop->setFocus();
}

void ReachAnswerView::add_verdict(QVBoxLayout& column) {
  auto* row = new QHBoxLayout;
  row->setSpacing(8);
  if (!answer_.verdict.isEmpty())
    row->addWidget(new VerdictMark(answer_.mark, answer_.verdict, snug::palette(theme_), body_), 0,
                   Qt::AlignTop);
  const QString said = answer_.verdict.isEmpty() ? answer_.sentence
                                                 : words(text::answer_of, answer_.verdict.toStdString(),
                                                         answer_.sentence.toStdString());
  QLabel* sentence = wrapped_text(said, answer_.verdict.isEmpty() ? "muted" : "heading", body_);
  sentence->setObjectName(QStringLiteral("reach_sentence"));
  sentence->setAccessibleName(said);
  sentence->setTextInteractionFlags(Qt::TextSelectableByMouse);
  row->addWidget(sentence, 1);
  column.addLayout(row);
}

void ReachAnswerView::add_hops(QVBoxLayout& column) {
  if (answer_.end) add_hop(column, *answer_.end, 0);
  int number = 0;
  bool back = false;
  for (const HopLine& line : answer_.way) {
    if (number == 0 || line.back != back)
      column.addWidget(
          wrapped_text(words(line.back ? text::answer_back : text::answer_there), "muted", body_));
    back = line.back;
    add_hop(column, line, ++number);
  }
  if (answer_.way.empty() && !answer_.end) return;
  auto* show = new QPushButton(words(text::answer_show), body_);
  show->setObjectName(QStringLiteral("show_way"));
  show->setProperty("role", QStringLiteral("small"));
  show->setToolTip(words(text::tip_show_way));
  connect(show, &QPushButton::clicked, this, [this] {
    std::vector<AnyId> all;
    const auto take = [&all](const HopLine& line) {
      for (const AnyId id : line.places)
        if (std::find(all.begin(), all.end(), id) == all.end()) all.push_back(id);
    };
    for (const HopLine& line : answer_.way) take(line);
    if (answer_.end) take(*answer_.end);
    go(all);
  });
  column.addWidget(show, 0, Qt::AlignLeft);
}

void ReachAnswerView::add_hop(QVBoxLayout& column, const HopLine& line, int number) {
  auto* row = new PanelRow(body_, QStringLiteral("hop"), [this, places = line.places] { go(places); });
  row->setProperty("ends", number == 0);
  row->setToolTip(words(text::tip_go));
  auto* across = new QHBoxLayout(row);
  across->setContentsMargins(8, 4, 8, 4);
  across->setSpacing(8);
  QString name = line.text;
  if (number == 0) {
    const QString ends = words(text::answer_ends);
    across->addWidget(new VerdictMark(answer_.mark, ends, snug::palette(theme_), row), 0, Qt::AlignTop);
    name = words(text::promise_state, ends.toStdString(), line.text.toStdString());
    across->addWidget(wrapped_text(name, "heading", row), 1);
  } else {
    QLabel* place = wrapped_text(QString::number(number), "muted", row);
    place->setFixedWidth(kNumberWidth);
    across->addWidget(place, 0, Qt::AlignTop);
    across->addWidget(wrapped_text(line.text, "", row), 1);
  }
  row->setAccessibleName(name);
  column.addWidget(row);
}

void ReachAnswerView::go(const std::vector<AnyId>& places) {
  session_.select(places);
  for (const AnyId id : places) {
    if (id.kind == Kind::pc) continue;
    emit place_wanted(id);
    return;
  }
}

} // namespace snug
