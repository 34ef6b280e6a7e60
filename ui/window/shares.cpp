#include "ui/window/shares.h"

#include "core/text/window_text.h"
#include "ui/session/words.h"
#include "ui/window/exercise_strip.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QPushButton>
#include <QSplitter>
#include <QStackedWidget>
#include <QStyle>
#include <QTabBar>
#include <QTabWidget>

#include <algorithm>

namespace snug {

namespace {

// Heights of the panels: the picture comes first.
constexpr int kUsual = 210, kLarge = 250;
constexpr int kLeastPicture = 340;
constexpr int kLeastWidth = 560; // of the picture
constexpr int kTitleGap = 12;

} // namespace

Shares::Shares(const Parts& parts, QObject* parent)
    : QObject(parent), parts_(parts), beside_(new QWidget(&parts.tabs)),
      tools_(static_cast<std::size_t>(parts.tabs.count()), nullptr) {
  auto* row = new QHBoxLayout(beside_);
  row->setContentsMargins(0, 0, 10, 0);
  turn_ = new QPushButton(words(text::sheet_hide), beside_);
  turn_->setObjectName(QStringLiteral("fold"));
  turn_->setProperty("role", QStringLiteral("small"));
  turn_->setToolTip(words(text::sheet_fold_help));
  row->addWidget(turn_);
  parts_.tabs.installEventFilter(this);
  parts_.down.widget(0)->setMinimumWidth(kLeastWidth);
  parts_.down.installEventFilter(this);
  parts_.top.installEventFilter(this);
  connect(turn_, &QPushButton::clicked, this, [this] { fold(folded_ ? Folded::open : Folded::folded); });
  connect(&parts_.down, &QSplitter::splitterMoved, this, [this] { pulled_ = parts_.down.sizes().at(1); });
  connect(&parts_.tabs, &QTabWidget::currentChanged, this, &Shares::share_height);
  connect(&parts_.tabs, &QTabWidget::currentChanged, this, &Shares::show_tools);
  connect(parts_.tabs.tabBar(), &QTabBar::tabBarClicked, this, &Shares::press_tab);
  show_tools();
}

void Shares::set_tools(int tab, QWidget& tools) {
  tools_[static_cast<std::size_t>(tab)] = &tools;
  auto* row = static_cast<QHBoxLayout*>(beside_->layout());
  row->insertWidget(row->count() - 1, &tools);
  show_tools();
}

void Shares::show_tools() {
  for (std::size_t i = 0; i < tools_.size(); ++i)
    if (tools_[i]) tools_[i]->setVisible(!folded_ && static_cast<int>(i) == parts_.tabs.currentIndex());
  place_tools();
}

// Not as the tabs' corner widget: those get a line drawn behind them.
void Shares::place_tools() {
  const QTabWidget& tabs = parts_.tabs;
  const QSize wanted = beside_->sizeHint();
  const int room = tabs.width() - tabs.tabBar()->sizeHint().width();
  const QSize size(std::max(std::min(wanted.width(), room), beside_->minimumSizeHint().width()),
                   wanted.height());
  const QRect where(tabs.width() - size.width(), (tabs.tabBar()->height() - size.height()) / 2, size.width(),
                    size.height());
  beside_->setGeometry(QStyle::visualRect(tabs.layoutDirection(), tabs.rect(), where));
  beside_->raise();
}

void Shares::pull(int height) {
  pulled_ = height;
  share_height();
}

void Shares::fold(Folded wish) {
  by_person_ = wish;
  follow_window();
}

void Shares::show(int tab) {
  parts_.tabs.setCurrentIndex(tab);
  fold(Folded::open);
}

// The name of what is open closes it.
void Shares::press_tab(int tab) {
  if (tab < 0) return;
  fold(!folded_ && tab == parts_.tabs.currentIndex() ? Folded::folded : Folded::open);
}

void Shares::follow_window() {
  const bool low = parts_.tabs.window()->height() < kUnfolds;
  set_folded(by_person_ == Folded::folded || (by_person_ == Folded::by_width && low));
}

void Shares::set_folded(bool folded) {
  if (folded == folded_) return;
  folded_ = folded;
  for (auto* inside : parts_.tabs.findChildren<QStackedWidget*>(QString(), Qt::FindDirectChildrenOnly))
    inside->setVisible(!folded);
  parts_.tabs.setMaximumHeight(folded ? parts_.tabs.tabBar()->sizeHint().height() : QWIDGETSIZE_MAX);
  parts_.tabs.setProperty("folded", folded);
  turn_->setText(words(folded ? text::sheet_show : text::sheet_hide));
  show_tools();
  share_height();
}

void Shares::share_height() {
  const QList<int> now = parts_.down.sizes();
  const int both = now[0] + now[1];
  if (both < kLeastPicture) return; // not laid out yet
  int wanted = pulled_ > 0 ? std::min(pulled_, both - kLeastPicture / 2) : std::min(kUsual, both / 2);
  if (parts_.tabs.currentWidget() == &parts_.large)
    wanted = std::max(wanted, std::min(kLarge, both - kLeastPicture));
  if (folded_) wanted = parts_.tabs.maximumHeight();
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
  if (of == &parts_.tabs) {
    place_tools();
  } else if (of == &parts_.top) {
    fit_title();
  } else { // once the splitter knows its new size
    follow_window();
    QMetaObject::invokeMethod(this, &Shares::share_height, Qt::QueuedConnection);
  }
  return QObject::eventFilter(of, event);
}

} // namespace snug
