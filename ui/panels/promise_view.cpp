#include "ui/panels/promise_view.h"

#include "core/findings/rule.h"
#include "core/gesture/promise.h"
#include "core/text/reach_panel_text.h"
#include "core/text/tip_text.h"
#include "ui/panels/panel_row.h"
#include "ui/panels/verdict_mark.h"
#include "ui/session/words.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace snug {

namespace {

constexpr std::size_t kMostRows = 200; // the rest is counted
constexpr int kBeside = 8;             // pixels shown above and below a row that is wanted

std::pair<Mark, const Template*> state_of(Kept k) {
  switch (k) {
  case Kept::kept:
    return {Mark::yes, &text::promise_is_kept};
  case Kept::broken:
    return {Mark::no, &text::promise_is_broken};
  default:
    return {Mark::none, &text::promise_not_judged};
  }
}

QString row_name(PromiseId id) { return QStringLiteral("promise_") + as_qt(to_text(AnyId(id))); }

} // namespace

bool PromiseView::Row::same_words(const Row& o) const {
  return id == o.id && now == o.now && says == o.says && why == o.why && elsewhere == o.elsewhere &&
         rule == o.rule && chosen == o.chosen;
}

PromiseView::PromiseView(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
  setObjectName(QStringLiteral("promises"));
}

void PromiseView::set_theme(Theme theme) {
  theme_ = theme;
  rebuild();
}

void PromiseView::show_promises(const Analysis& a) {
  std::vector<Row> next;
  const std::vector<PromiseLine> lines = promise_lines(a, session_.exercise());
  for (const PromiseLine& line : lines) {
    if (next.size() >= kMostRows) break;
    Row& row = next.emplace_back();
    row.id = line.id;
    row.now = line.now;
    row.says = words(line.says);
    row.why = words(line.why);
    if (!a.lab().exercises.empty()) row.elsewhere = words(occasions_text(a.lab(), line));
    if (line.finding) row.rule = as_qt(line.finding->rule->id);
    row.chosen = session_.is_selected(line.id);
    row.decides = line.decides;
  }
  const int beyond = static_cast<int>(lines.size() - next.size());
  const bool same = body_ && beyond == beyond_ &&
                    std::equal(next.begin(), next.end(), rows_.begin(), rows_.end(),
                               [](const Row& x, const Row& y) { return x.same_words(y); });
  rows_ = std::move(next);
  beyond_ = beyond;
  if (!same) rebuild();
}

// Once the rows are laid out.
void PromiseView::reveal(PromiseId id) {
  QTimer::singleShot(0, this, [this, name = row_name(id)] {
    auto* row = body_ ? body_->findChild<QWidget*>(name) : nullptr;
    for (QWidget* w = parentWidget(); row && w; w = w->parentWidget())
      if (auto* scroll = qobject_cast<QScrollArea*>(w)) return scroll->ensureWidgetVisible(row, 0, kBeside);
  });
}

void PromiseView::focus_promise(PromiseId id) {
  reveal(id);
  if (auto* row = body_ ? body_->findChild<QWidget*>(row_name(id)) : nullptr)
    row->setFocus(Qt::ShortcutFocusReason);
}

// Whoever had the focus among the rows has it afterwards.
void PromiseView::rebuild() {
  QString focused;
  for (const Row& r : rows_)
    if (const auto* row = body_ ? body_->findChild<QWidget*>(row_name(r.id)) : nullptr;
        row && row->hasFocus())
      focused = row->objectName();
  QVBoxLayout& column = renew_rows(*this, body_);
  if (rows_.empty()) column.addWidget(wrapped_text(words(text::promises_none), "muted", body_));
  for (const Row& r : rows_) column.addWidget(row_of(r));
  if (beyond_ > 0) column.addWidget(wrapped_text(words(text::promises_more, Count{beyond_}), "muted", body_));
  body_->show();
  if (!focused.isEmpty())
    if (auto* row = body_->findChild<QWidget*>(focused)) row->setFocus();
}

QWidget* PromiseView::row_of(const Row& r) {
  const PromiseId id = r.id;
  auto* frame = new PanelRow(body_, row_name(id), [this, id] { press(id); });
  frame->setProperty("part", QStringLiteral("promise"));
  frame->setProperty("chosen", r.chosen);
  auto* across = new QHBoxLayout(frame);
  across->setContentsMargins(8, 6, 8, 6);
  across->setSpacing(8);
  const auto [mark, word] = state_of(r.now);
  const QString state = words(*word);
  across->addWidget(new VerdictMark(mark, state, snug::palette(theme_), frame), 0, Qt::AlignTop);
  auto* texts = new QVBoxLayout;
  texts->setSpacing(2);
  texts->addWidget(wrapped_text(r.says, "heading", frame));
  const QString why = words(text::promise_state, state.toStdString(), r.why.toStdString());
  texts->addWidget(wrapped_text(why, r.now == Kept::broken ? "bad" : "muted", frame));
  if (!r.elsewhere.isEmpty()) texts->addWidget(wrapped_text(r.elsewhere, "muted", frame));
  texts->addStretch();
  across->addLayout(texts, 1);
  frame->setAccessibleName(r.says);
  frame->setToolTip(words(text::tip_promise_row));
  frame->setAccessibleDescription(why + QLatin1Char('\n') + r.elsewhere);
  add_buttons(r, frame);
  return frame;
}

void PromiseView::add_buttons(const Row& r, QWidget* frame) {
  auto* column = new QVBoxLayout;
  column->setSpacing(3);
  const auto put = [&](const char* name, const Template& t, const Template& help) {
    auto* button = new QPushButton(words(t), frame);
    button->setObjectName(QLatin1String(name));
    button->setProperty("role", QStringLiteral("small"));
    button->setToolTip(words(help));
    button->setAccessibleName(words(text::promise_state, words(t).toStdString(), r.says.toStdString()));
    column->addWidget(button);
    return button;
  };
  const PromiseId id = r.id;
  QPushButton* change = put("change", text::promise_change, text::promise_change_help);
  connect(change, &QPushButton::clicked, this, [this, id] { emit change_wanted(id); });
  if (!r.rule.isEmpty())
    connect(put("to_finding", text::promise_finding, text::tip_to_finding), &QPushButton::clicked, this,
            [this, id, rule = r.rule] { emit finding_wanted(rule, id); });
  connect(put("take_back", text::promise_remove, text::tip_take_back), &QPushButton::clicked, this,
          [this, id] {
            session_.seal();
            session_.perform(remove_promise(session_.lab(), id));
          });
  column->addStretch();
  static_cast<QHBoxLayout*>(frame->layout())->addLayout(column);
}

void PromiseView::press(PromiseId id) {
  const auto at = std::find_if(rows_.begin(), rows_.end(), [id](const Row& r) { return r.id == id; });
  if (at == rows_.end()) return;
  const auto decides = at->decides;
  session_.select({id});
  if (decides) emit asked(*decides);
}

} // namespace snug
