#include "ui/window/regions.h"

#include "core/text/access_text.h"
#include "ui/session/words.h"

#include <QAction>
#include <QApplication>
#include <QMainWindow>
#include <QMenu>

namespace snug {

namespace {

bool holds(const QWidget& region, const QWidget* w) { return w && (w == &region || region.isAncestorOf(w)); }

bool takes_focus(const QWidget& w, const QWidget& window) {
  return w.isVisibleTo(&window) && w.isEnabled() && (w.focusPolicy() & Qt::TabFocus) != 0;
}

} // namespace

Regions::Regions(QMainWindow& window, QMenu& menu, const std::vector<QWidget*>& regions)
    : QObject(&window), window_(window) {
  for (QWidget* w : regions) regions_.push_back({w, nullptr});
  const auto add = [&](const char* name, const Template& words_of, const QKeySequence& keys, int by) {
    auto* action = new QAction(words(words_of), &window);
    action->setObjectName(QLatin1String(name));
    action->setShortcut(keys);
    connect(action, &QAction::triggered, this, [this, by] { step(by); });
    menu.addAction(action);
  };
  add("next_region", text::act_next_region, Qt::Key_F6, 1);
  add("previous_region", text::act_previous_region, Qt::SHIFT | Qt::Key_F6, -1);
  connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) { remember(now); });
}

void Regions::remember(QWidget* now) {
  for (Region& r : regions_)
    if (r.widget && holds(*r.widget, now)) r.last = now;
}

int Regions::current() const {
  const QWidget* now = window_.focusWidget();
  for (std::size_t i = 0; i < regions_.size(); ++i)
    if (regions_[i].widget && holds(*regions_[i].widget, now)) return static_cast<int>(i);
  return -1;
}

bool Regions::enter(Region& region) {
  if (!region.widget || !region.widget->isVisibleTo(&window_)) return false;
  QWidget* target = region.last && takes_focus(*region.last, window_) ? region.last.data() : nullptr;
  if (!target && takes_focus(*region.widget, window_)) target = region.widget;
  QWidget* tab = nullptr; // of a folded side: where nothing else is
  for (QWidget* w = region.widget->nextInFocusChain(); !target && w != region.widget;
       w = w->nextInFocusChain()) {
    if (!holds(*region.widget, w) || !takes_focus(*w, window_)) continue;
    const bool is_tab = w->objectName() == QLatin1String("upright_tab");
    if (is_tab && !tab) tab = w;
    if (!is_tab) target = w;
  }
  if (!target) target = tab;
  if (!target) return false;
  target->setFocus(Qt::ShortcutFocusReason);
  return true;
}

void Regions::step(int by) {
  const int count = static_cast<int>(regions_.size());
  int at = current();
  if (at < 0 && by < 0) at = 0;
  for (int tried = 0; tried < count; ++tried) {
    at = (at + by + count) % count;
    if (enter(regions_[static_cast<std::size_t>(at)])) return;
  }
}

} // namespace snug
