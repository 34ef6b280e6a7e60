#include "ui/panels/when_seen.h"

#include <QEvent>
#include <QTimer>
#include <QWidget>
#include <QWindow>

#include <algorithm>
#include <utility>
#include <vector>

namespace snug {

namespace {

constexpr int kMoment = 4; // ms

bool stands_on_screen(const QWidget& w) {
  const QWindow* window = w.window()->windowHandle();
  return window && window->isExposed();
}

std::vector<std::pair<const QWidget*, const bool*>>& all() {
  static std::vector<std::pair<const QWidget*, const bool*>> watched;
  return watched;
}

} // namespace

WhenSeen::WhenSeen(QWidget& widget, std::function<void()> fill)
    : QObject(&widget), widget_(widget), fill_(std::move(fill)) {
  widget_.installEventFilter(this);
  all().emplace_back(&widget_, &stale_);
}

WhenSeen::~WhenSeen() {
  std::erase_if(all(), [this](const auto& w) { return w.second == &stale_; });
}

int WhenSeen::waiting() {
  return static_cast<int>(std::count_if(all().begin(), all().end(),
                                        [](const auto& w) { return *w.second && w.first->isVisible(); }));
}

void WhenSeen::renew() {
  stale_ = true;
  if (was_seen_ && widget_.isVisible()) fill_now();
}

void WhenSeen::fill_now() {
  if (!std::exchange(stale_, false)) return;
  fill_();
}

bool WhenSeen::eventFilter(QObject*, QEvent* event) {
  if (event->type() == QEvent::Show && (was_seen_ || stands_on_screen(widget_))) {
    was_seen_ = true;
    fill_now();
  }
  if (event->type() == QEvent::Paint && !std::exchange(was_seen_, true)) {
    const auto soon = [this] { QTimer::singleShot(kMoment, this, &WhenSeen::fill_now); };
    QMetaObject::invokeMethod(this, soon, Qt::QueuedConnection); // the round of painting is over then
  }
  return false;
}

} // namespace snug
