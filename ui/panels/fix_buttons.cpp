#include "ui/panels/fix_buttons.h"

#include "core/text/tip_text.h"
#include "ui/session/words.h"

#include <QBoxLayout>
#include <QPushButton>

#include <algorithm>

namespace snug {

FixButtons::FixButtons(Session& session, QObject* parent) : QObject(parent), session_(session) {
  timer_.setInterval(0);
  connect(&timer_, &QTimer::timeout, this, &FixButtons::step);
  connect(&session_, &Session::lab_changed, this, &FixButtons::forget);
}

void FixButtons::want(QWidget* row, QWidget* next, const Finding& finding) {
  wanted_.push_back({row, next, &finding});
  if (!timer_.isActive()) timer_.start();
}

void FixButtons::forget() {
  wanted_.clear();
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
  for (const Fix& fix : fixes) {
    QPushButton* button = make_button(fix, *w.row);
    across->insertWidget(across->indexOf(w.next), button, 0, Qt::AlignVCenter);
    button->show();
    QWidget::setTabOrder(before, button);
    before = button;
  }
}

QPushButton* FixButtons::make_button(const Fix& fix, QWidget& row) {
  auto* button = new QPushButton(words(fix.label), &row);
  button->setProperty("role", QStringLiteral("fix"));
  button->setToolTip(words(text::tip_fix, english(fix.label)));
  connect(button, &QPushButton::clicked, this, [this, edit = fix.edit] {
    session_.seal();
    session_.perform(edit);
  });
  return button;
}

} // namespace snug
