#include "ui/window/shares.h"

#include "ui/window/exercise_strip.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QSplitter>
#include <QStyle>
#include <QTabBar>
#include <QTabWidget>

#include <algorithm>

namespace snug {

namespace {

// Heights of the panels: the picture comes first.
constexpr int kUsual = 210, kReach = 250;
constexpr int kLeastPicture = 340;
constexpr int kLeastWidth = 560; // of the picture
constexpr int kTitleGap = 12;

} // namespace

Shares::Shares(const Parts& parts, QObject* parent)
    : QObject(parent), parts_(parts), beside_(new QWidget(&parts.tabs)) {
  auto* row = new QHBoxLayout(beside_);
  row->setContentsMargins(0, 0, 10, 0);
  for (QWidget* tools : parts_.tools)
    if (tools) row->addWidget(tools);
  parts_.tabs.installEventFilter(this);
  show_tools();
  parts_.down.widget(0)->setMinimumWidth(kLeastWidth);
  parts_.down.installEventFilter(this);
  parts_.top.installEventFilter(this);
  connect(&parts_.down, &QSplitter::splitterMoved, this, [this] { pulled_ = parts_.down.sizes().at(1); });
  connect(&parts_.tabs, &QTabWidget::currentChanged, this, &Shares::share_height);
  connect(&parts_.tabs, &QTabWidget::currentChanged, this, &Shares::show_tools);
}

void Shares::show_tools() {
  for (std::size_t i = 0; i < parts_.tools.size(); ++i)
    if (parts_.tools[i]) parts_.tools[i]->setVisible(static_cast<int>(i) == parts_.tabs.currentIndex());
  place_tools();
}

// Not as the tabs' corner widget: those get a line drawn behind them.
void Shares::place_tools() {
  const QTabWidget& tabs = parts_.tabs;
  const QSize size = beside_->sizeHint();
  const QRect where(tabs.width() - size.width(), (tabs.tabBar()->height() - size.height()) / 2, size.width(),
                    size.height());
  beside_->setGeometry(QStyle::visualRect(tabs.layoutDirection(), tabs.rect(), where));
  beside_->raise();
}

void Shares::pull(int height) {
  pulled_ = height;
  share_height();
}

void Shares::share_height() {
  const QList<int> now = parts_.down.sizes();
  const int both = now[0] + now[1];
  if (both < kLeastPicture) return; // not laid out yet
  int wanted = pulled_ > 0 ? std::min(pulled_, both - kLeastPicture / 2) : std::min(kUsual, both / 2);
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
  if (of == &parts_.tabs)
    place_tools();
  else if (of == &parts_.top)
    fit_title();
  else // once the splitter knows its new size
    QMetaObject::invokeMethod(this, &Shares::share_height, Qt::QueuedConnection);
  return QObject::eventFilter(of, event);
}

} // namespace snug
