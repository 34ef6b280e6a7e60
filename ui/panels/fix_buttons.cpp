#include "ui/panels/fix_buttons.h"

#include "core/analyse/repair_alike.h"
#include "core/text/tip_text.h"
#include "ui/session/words.h"

#include <QApplication>
#include <QBoxLayout>
#include <QPushButton>

#include <algorithm>

namespace snug {

FixButtons::FixButtons(Session& session, QObject* parent) : QObject(parent), session_(session) {
  timer_.setInterval(0);
  connect(&timer_, &QTimer::timeout, this, &FixButtons::step);
  connect(&session_, &Session::lab_changed, this, [this] {
    forget();
    last_.invalidate();
  });
}

void FixButtons::want(QWidget* row, QWidget* next, const Finding& finding) {
  wanted_.push_back({row, next, &finding});
  if (!timer_.isActive()) timer_.start();
}

void FixButtons::forget() {
  wanted_.clear();
  all_.clear();
  timer_.stop();
}

void FixButtons::step() {
  if (wanted_.empty()) return timer_.stop();
  if (session_.is_previewing()) return;
  auto at = std::find_if(wanted_.begin(), wanted_.end(),
                         [](const Wanted& w) { return w.row && !w.row->visibleRegion().isEmpty(); });
  if (at == wanted_.end()) at = wanted_.begin();
  const Wanted next = *at;
  wanted_.erase(at);
  if (next.row) add(next);
}

void FixButtons::add(const Wanted& w) {
  ++asked_;
  const std::vector<Fix> fixes = session_.analysis().fixes(*w.finding);
  if (fixes.empty()) return;
  auto* across = static_cast<QBoxLayout*>(w.row->layout());
  QWidget* before = w.row;
  const auto put = [&](QPushButton* button) {
    across->insertWidget(across->indexOf(w.next), button, 0, Qt::AlignVCenter);
    button->show();
    QWidget::setTabOrder(before, button);
    before = button;
  };
  for (const Fix& fix : fixes) put(make_button(fix, *w.row));
  const Rule& rule = *w.finding->rule;
  if (std::find(all_.begin(), all_.end(), &rule) != all_.end()) return;
  all_.push_back(&rule);
  if (const std::size_t count = alike(session_.analysis(), rule.id, session_.exercise()); count > 1)
    put(make_all(rule, count, *w.row));
}

QPushButton* FixButtons::make_all(const Rule& rule, std::size_t count, QWidget& row) {
  auto* button = new QPushButton(words(text::fix_all, std::to_string(count)), &row);
  button->setObjectName(QStringLiteral("fix_all"));
  button->setProperty("role", QStringLiteral("fix"));
  button->setToolTip(words(text::tip_fix_alike, std::to_string(count)));
  button->setAccessibleDescription(button->toolTip());
  on_press(*button, [this, id = rule.id, count] { repair(id, count); });
  return button;
}

void FixButtons::repair(std::string_view rule, std::size_t count) {
  const AlikeRepaired done = repair_alike(session_.analysis(), rule, session_.exercise());
  session_.seal();
  if (done.edit.empty() || !session_.perform(done.edit)) return;
  const Count repaired{static_cast<std::int64_t>(done.count)};
  const bool all = alike(session_.analysis(), rule, session_.exercise()) == 0;
  session_.tell(Notice::Kind::told, all ? words(text::fixed_alike, repaired)
                                        : words(text::fixed_some, repaired, std::to_string(count)));
}

// After a repair the list moves up: the second press of a double click would repair something else.
void FixButtons::on_press(QPushButton& button, std::function<void()> repair) {
  connect(&button, &QPushButton::pressed, this,
          [this] { by_mouse_ = QGuiApplication::mouseButtons() != Qt::NoButton; });
  connect(&button, &QPushButton::clicked, this, [this, repair = std::move(repair)] {
    if (by_mouse_ && last_.isValid() && last_.elapsed() < QApplication::doubleClickInterval()) return;
    repair();
    last_.start(); // what else changes the lab ends it
  });
}

QPushButton* FixButtons::make_button(const Fix& fix, QWidget& row) {
  auto* button = new QPushButton(words(fix.label), &row);
  button->setProperty("role", QStringLiteral("fix"));
  button->setToolTip(words(text::tip_fix, fix.label));
  on_press(*button, [this, edit = fix.edit] {
    session_.seal();
    session_.perform(edit);
  });
  return button;
}

} // namespace snug
