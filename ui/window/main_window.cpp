#include "ui/window/main_window.h"

#include "core/base/size.h"
#include "core/budget/memory.h"
#include "core/budget/memory_words.h"
#include "core/text/extras_text.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/minimap.h"
#include "ui/outline/outline_panel.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/parts_panel.h"
#include "ui/panels/property_panel.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"
#include "ui/window/exercise_strip.h"
#include "ui/window/menu_corner.h"
#include "ui/window/notice_bar.h"
#include "ui/window/regions.h"
#include "ui/window/shares.h"
#include "ui/window/sides.h"
#include "ui/window/start_page.h"

#include <QAction>
#include <QApplication>
#include <QFileSystemWatcher>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QScreen>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabBar>
#include <QTabWidget>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>

namespace snug {

MainWindow::MainWindow(QWidget* parent) : QMainWindow(parent) {
  hold_sheet_back(*qApp);
  setObjectName(QStringLiteral("window"));
  resize(QSize(1440, 900).boundedTo(QGuiApplication::primaryScreen()->availableSize()));
  setAcceptDrops(true);
  make_parts();
  make_actions();
  make_shell();
  connect_panels();
  connect_session();
  connect_start_page();
  connect_own_parts();
  if (parts_->problem()) session_.tell(*parts_->problem(), Notice::Until::never);
  set_theme(theme_of(QApplication::palette()));
  refresh_title();
  refresh_actions();
  refresh_footer();
  show_page(0);
}

void MainWindow::make_parts() {
  canvas_ = new Canvas(session_);
  new Minimap(*canvas_);
  ruler_ = new Ruler(session_);
  exercises_ = new ExerciseStrip(session_);
  exercises_->keep_clear(*ruler_);
  findings_ = new FindingsPanel(session_);
  properties_ = new PropertyPanel(session_);
  parts_ = new PartsPanel(session_, *canvas_);
  outline_ = new OutlinePanel(session_, *canvas_);
  sides_ = new Sides(session_, parts_, outline_, properties_);
  notice_ = new NoticeBar;
  start_ = new StartPage(settings_);
  watcher_ = new QFileSystemWatcher(this);
  constexpr int kQuiet = 80; // ms
  settle_ = new QTimer(this);
  settle_->setSingleShot(true);
  settle_->setInterval(kQuiet);
}

void MainWindow::make_shell() {
  auto* shell = new QWidget(this);
  shell->setObjectName(QStringLiteral("shell"));
  auto* column = new QVBoxLayout(shell);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(make_top());
  pages_ = new QStackedWidget(shell);
  pages_->setObjectName(QStringLiteral("pages"));
  pages_->addWidget(start_);
  pages_->addWidget(make_middle());
  column->addWidget(pages_, 1);
  auto* footer = make_footer();
  column->addWidget(footer);
  notice_->setParent(shell);
  notice_->float_above({tabs_, footer});
  setCentralWidget(shell);
  shares_ = new Shares({*down_, *tabs_, *tabs_->widget(kReachTab), *top_, *document_, *exercises_}, this);
  shares_->set_tools(kFindingsTab, findings_->tools());
  new Regions(*this, *findChild<QMenu*>(QStringLiteral("view_menu")),
              {notice_, exercises_, &sides_->left(), ruler_, canvas_, tabs_, &sides_->right(), start_});
  make_shortcuts();
  keep_select_all_out();
}

// "All" in a panel is not all machines of the picture, which is not looked at there.
void MainWindow::keep_select_all_out() {
  for (QWidget* panel : {static_cast<QWidget*>(properties_), static_cast<QWidget*>(tabs_)})
    panel->installEventFilter(this);
}

void MainWindow::connect_session() {
  const auto notices = [this] { action("copy_notice")->setEnabled(!notice_->text().isEmpty()); };
  connect(notice_, &NoticeBar::changed, this, notices);
  notices();
  connect(notice_, &NoticeBar::left, this, [this] {
    if (pages_->currentIndex() == 1) canvas_->setFocus();
  });
  connect(&session_, &Session::told, this, &MainWindow::say);
  connect(&session_, &Session::document_changed, this, &MainWindow::refresh_title);
  connect(&session_, &Session::document_changed, this, &MainWindow::watch_file);
  connect(&session_, &Session::lab_changed, this, &MainWindow::refresh_actions);
  connect(&session_, &Session::lab_changed, notice_, [this] { notice_->outdate(Notice::Until::step); });
  connect(&session_, &Session::moved_on, notice_, [this] { notice_->outdate(Notice::Until::step); });
  connect(&session_, &Session::saved, notice_, [this] {
    notice_->outdate(Notice::Until::saved);
    notice_->withdraw(QStringLiteral("changed"));
  });
  connect(&session_, &Session::shown_changed, this, &MainWindow::refresh_footer);
  connect(&session_, &Session::shown_changed, shares_, [this] {
    if (!session_.is_previewing()) shares_->fit_title();
  });
  connect(&session_, &Session::selection_changed, this, &MainWindow::refresh_actions);
  connect(&session_, &Session::exercise_changed, this, &MainWindow::refresh_actions);
  connect(&session_, &Session::lab_changed, this, [this] { ending_ = false; });
  connect(&session_, &Session::started, this, [this] {
    for (const char* topic : {"changed", "keep_start"}) notice_->withdraw(QLatin1String(topic));
    notice_->outdate(Notice::Until::other_lab);
    show_page(1);
  });
  connect(watcher_, &QFileSystemWatcher::fileChanged, this, &MainWindow::file_changed);
  connect(watcher_, &QFileSystemWatcher::directoryChanged, this, &MainWindow::file_changed);
  connect(settle_, &QTimer::timeout, this, &MainWindow::look_at_file);
}

void MainWindow::connect_start_page() {
  connect(start_, &StartPage::sample_wanted, this,
          [this](const QString& name) { unless_unsaved([&] { start_sample(name.toStdString()); }); });
  connect(start_, &StartPage::blank_wanted, this,
          [this](bool this_computer) { unless_unsaved([&] { start_blank(this_computer); }); });
  connect(start_, &StartPage::own_wanted, this,
          [this](const QString& path) { unless_unsaved([&] { start_own(path); }); });
  connect(start_, &StartPage::open_wanted, this, &MainWindow::ask_open);
  connect(start_, &StartPage::file_wanted, this,
          [this](const QString& path) { unless_unsaved([&] { open_file(path); }); });
  connect(start_, &StartPage::forget_wanted, this, [this] {
    remember_recent(settings_.forget_recent());
    start_->refresh();
  });
}

// While the session is still there: a field that is being edited tells it when it goes.
MainWindow::~MainWindow() {
  put_sheet_on(*qApp); // it was never shown
  delete centralWidget();
}

void MainWindow::setVisible(bool visible) {
  if (visible) put_sheet_on(*qApp);
  QMainWindow::setVisible(visible);
}

// 0: the start page, which has no lab to speak of; 1: the lab.
void MainWindow::show_page(int page) {
  pages_->setCurrentIndex(page);
  if (page == 1) canvas_->setFocus(); // else the first field of the window has the keyboard
  for (QWidget* w : {top_, footer_, menuBar()->cornerWidget()}) w->setVisible(page == 1);
  for (const char* name :
       {"about_lab", "add_to_plan", "save", "save_as", "keep_start", "hand_out", "show_all", "tidy",
        "addresses", "select_all", "copy_picture", "copy_table", "find_anything"})
    action(name)->setEnabled(page == 1);
}

QWidget* MainWindow::make_top() {
  auto* top = new QFrame(this);
  top_ = top;
  top->setObjectName(QStringLiteral("topbar"));
  auto* row = new QHBoxLayout(top);
  row->setContentsMargins(12, 6, 12, 6);
  document_ = new QPushButton(top);
  document_->setProperty("role", QStringLiteral("document"));
  document_->setToolTip(words(text::document_help));
  connect(document_, &QPushButton::clicked, this, &MainWindow::show_lab);
  row->addWidget(document_);
  row->addSpacing(12);
  row->addWidget(exercises_, 1);
  auto* corner = new MenuCorner(*menuBar(), *make_find());
  // With the place among those that go where the window is narrow: the last first.
  constexpr std::array<std::pair<const char*, int>, 5> kButtons{
      {{"undo", 1}, {"redo", 2}, {"show_all", 4}, {"tidy", 3}, {"hand_out", 0}}};
  for (const auto& [name, goes] : kButtons) hand_out_button_ = corner->add(*action(name), goes); // the last
  action("hand_out")->setToolTip(words(text::hand_out_drag));
  hand_out_button_->installEventFilter(this);
  menuBar()->setCornerWidget(corner);
  return top;
}

QWidget* MainWindow::make_footer() {
  auto* footer = new QFrame(this);
  footer_ = footer;
  footer->setObjectName(QStringLiteral("footer"));
  auto* row = new QHBoxLayout(footer);
  row->setContentsMargins(14, 3, 14, 3);
  counts_ = new QLabel(footer);
  sizes_ = new QLabel(footer);
  sizes_->setObjectName(QStringLiteral("other_sizes"));
  row->addWidget(counts_);
  row->addStretch();
  row->addWidget(sizes_);
  return footer;
}

void MainWindow::refresh_footer() {
  const Analysis& a = session_.shown();
  const Lab& lab = a.lab();
  const auto count = [](const Template& t, std::size_t n) {
    return words(t, Count{static_cast<std::int64_t>(n)});
  };
  const QString counts = QStringList{count(text::footer_machines, lab.machines.size()),
                                     count(text::footer_segments, lab.segments.size()),
                                     count(text::footer_addresses, a.addresses().all().size())}
                             .join(QStringLiteral(" · "));
  if (counts != counts_->text())
    counts_->setText(counts); // else all is laid out again, at every move of a drag
  constexpr std::array<std::int64_t, 4> kSizes{16, 32, 48, 64};
  QStringList parts, lines{words(text::tip_sizes)};
  bool over = false;
  for (const std::int64_t gib : kSizes) {
    const MemoryBudget b = on_pc_of(gib * kMibPerGib, a.budgets(session_.exercise()));
    over |= b.verdict() == Verdict::over;
    lines << words(text::tip_size, std::to_string(gib), running_words(b));
    const Template& t = b.verdict() == Verdict::over    ? text::verdict_over
                        : b.verdict() == Verdict::tight ? text::verdict_tight
                                                        : text::verdict_fits;
    parts << words(text::footer_size, std::to_string(gib), snug::say(t));
  }
  const QString sizes = parts.join(QStringLiteral(" · "));
  if (sizes != sizes_->text()) sizes_->setText(sizes);
  if (over) lines << words(text::tip_size_over);
  const QString tip = lines.join(QLatin1Char('\n'));
  if (tip == sizes_->toolTip()) return;
  sizes_->setToolTip(tip);
  sizes_->setAccessibleDescription(tip);
}

void MainWindow::refresh_title() {
  const QString mark = session_.is_read_only() ? words(text::title_read_only) : QString();
  setWindowTitle(session_.shown_name() + QStringLiteral("[*]") + mark + QStringLiteral(" - Snuglab"));
  setWindowModified(session_.is_dirty());
  setWindowFilePath(session_.path());
  const QString dirty = QStringLiteral(" •");
  document_->ensurePolished();
  const QString title = as_qt(session_.lab().facts.title);
  const QString name = (title.isEmpty() ? session_.shown_name() : QString(title))
                           .replace(QLatin1Char('&'), QStringLiteral("&&"));
  document_->setText(name + dirty);
  document_->setMinimumWidth(document_->sizeHint().width()); // the exercises stay where they are
  if (!session_.is_dirty()) document_->setText(name);
  shares_->fit_title();
}

void MainWindow::say(const Notice& notice) { notice_->show_notice(notice); }

} // namespace snug
