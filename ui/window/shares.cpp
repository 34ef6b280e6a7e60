#include "ui/window/shares.h"

#include "ui/window/exercise_strip.h"

#include <QEvent>
#include <QLabel>
#include <QLayout>
#include <QSplitter>
#include <QTabWidget>

#include <algorithm>

namespace snug {

namespace {

// Heights of the panels. A window of 1080 lines has room for a large picture.
constexpr int kUsual = 210, kFourFindings = 366, kReach = 292;
constexpr int kRoomy = 700, kLeastPicture = 240; // both together; the picture alone
constexpr int kLeastWidth = 560;                 // of the picture
constexpr int kTitleGap = 12;

int usual_height(int both) {
  return both >= kRoomy ? kUsual
                        : std::clamp(both - kLeastPicture, std::min(kUsual, both / 2), kFourFindings);
}

} // namespace

Shares::Shares(const Parts& parts, QObject* parent) : QObject(parent), parts_(parts) {
  parts_.down.widget(0)->setMinimumWidth(kLeastWidth);
  parts_.down.installEventFilter(this);
  parts_.top.installEventFilter(this);
  connect(&parts_.down, &QSplitter::splitterMoved, this, [this] { pulled_ = parts_.down.sizes().at(1); });
  connect(&parts_.tabs, &QTabWidget::currentChanged, this, &Shares::share_height);
}

void Shares::pull(int height) {
  pulled_ = height;
  share_height();
}

void Shares::share_height() {
  const QList<int> now = parts_.down.sizes();
  const int both = now[0] + now[1];
  if (both < kLeastPicture) return; // not laid out yet
  int wanted = pulled_ > 0 ? std::min(pulled_, both - kLeastPicture / 2) : usual_height(both);
  if (parts_.tabs.currentWidget() == &parts_.reach)
    wanted = std::max(wanted, std::min(kReach, both - kLeastPicture));
  if (wanted != now[1]) parts_.down.setSizes({both - wanted, wanted});
}

void Shares::fit_title() {
  const QMargins edge = parts_.top.layout()->contentsMargins();
  const int room = parts_.top.width() - edge.left() - edge.right();
  const int exercises = parts_.exercises.line_width();
  const int title = parts_.title.minimumWidth() + parts_.top.layout()->spacing() * 2 + kTitleGap;
  parts_.title.setVisible(exercises > room || exercises + title <= room);
}

bool Shares::eventFilter(QObject* of, QEvent* event) {
  if (event->type() != QEvent::Resize) return QObject::eventFilter(of, event);
  if (of == &parts_.top)
    fit_title();
  else // once the splitter knows its new size
    QMetaObject::invokeMethod(this, &Shares::share_height, Qt::QueuedConnection);
  return QObject::eventFilter(of, event);
}

} // namespace snug
