// The panels around the picture: where they stand, what leads from one to another, and those that are made
// only when somebody wants them.

#include "core/text/access_text.h"
#include "core/text/reach_panel_text.h"
#include "core/text/tip_text.h"
#include "core/text/window_text.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/in_place.h"
#include "ui/outline/outline_panel.h"
#include "ui/panels/address_panel.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/reach_panel.h"
#include "ui/panels/severity_mark.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/window/exercise_strip.h"
#include "ui/window/main_window.h"
#include "ui/window/shares.h"
#include "ui/window/sides.h"

#include <QLineEdit>
#include <QSplitter>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>

namespace snug {

namespace {

// Stands where a panel will be.
QWidget* page() {
  auto* page = new QWidget;
  page->setMinimumSize(1, 1); // a panel that comes later does not push the others
  auto* box = new QVBoxLayout(page);
  box->setContentsMargins(0, 0, 0, 0);
  return page;
}

} // namespace

QWidget* MainWindow::make_middle() {
  auto* centre = new QWidget;
  auto* column = new QVBoxLayout(centre);
  column->setContentsMargins(6, 8, 6, 6);
  column->setSpacing(6);
  column->addWidget(ruler_);
  tabs_ = new QTabWidget;
  tabs_->setObjectName(QStringLiteral("sheet"));
  tabs_->setAccessibleName(words(text::access_sheet));
  tabs_->setDocumentMode(true);
  tabs_->tabBar()->setDrawBase(false);
  tabs_->addTab(findings_, words(text::tab_findings, "0"));
  tabs_->addTab(page(), words(text::tab_addresses));
  tabs_->addTab(page(), words(text::tab_reach));
  tabs_->setTabToolTip(kFindingsTab, words(text::tip_findings));
  tabs_->setTabToolTip(kAddressesTab, words(text::tip_addresses));
  tabs_->setTabToolTip(kReachTab, words(text::tip_reach));
  down_ = new QSplitter(Qt::Vertical);
  down_->addWidget(canvas_);
  down_->addWidget(tabs_);
  down_->setStretchFactor(0, 1);
  down_->setStretchFactor(1, 0);
  down_->setChildrenCollapsible(false);
  column->addWidget(down_, 1);
  sides_->set_centre(centre);
  return &sides_->across();
}

void MainWindow::connect_panels() {
  connect(exercises_, &ExerciseStrip::looked_at, ruler_, &Ruler::glance_at);
  connect(canvas_, &Canvas::menu_wanted, this, &MainWindow::show_menu);
  connect(canvas_, &Canvas::edit_wanted, this, &MainWindow::edit);
  connect(&outline_->view(), &OutlineView::menu_wanted, this, &MainWindow::show_menu);
  connect(&outline_->view(), &OutlineView::place_wanted, canvas_, &Canvas::show_place);
  connect(findings_, &FindingsPanel::place_wanted, canvas_, &Canvas::show_place);
  connect(properties_, &PropertyPanel::ask_wanted, this, [this](const ReachQuestion& question) {
    shares_->show(kReachTab);
    reach().ask(question);
  });
  connect(findings_, &FindingsPanel::promise_wanted, this, [this](PromiseId id) {
    shares_->show(kReachTab);
    reach().show_promise(id);
  });
  connect(findings_, &FindingsPanel::counted, this, [this](int errors, int cautions, int notes) {
    const QString title = words(text::tab_findings, std::to_string(errors + cautions + notes));
    if (title != tabs_->tabText(kFindingsTab)) tabs_->setTabText(kFindingsTab, title);
    const auto worst = errors > 0     ? std::optional(Severity::error)
                       : cautions > 0 ? std::optional(Severity::caution)
                                      : std::nullopt;
    if (std::exchange(worst_, worst) != worst) mark_findings();
  });
  connect(tabs_, &QTabWidget::currentChanged, this, [this](int tab) {
    if (tab == kAddressesTab) addresses();
    if (tab == kReachTab) reach();
  });
}

// Beside the name of their tab: the worst of them, also while the panel is folded.
void MainWindow::mark_findings() {
  tabs_->setTabIcon(kFindingsTab, worst_ ? severity_icon(*worst_, snug::palette(theme_)) : QIcon());
}

AddressPanel& MainWindow::addresses() {
  if (addresses_) return *addresses_;
  addresses_ = new AddressPanel(session_);
  addresses_->set_theme(theme_);
  action("address_cells")->setEnabled(true);
  tabs_->widget(kAddressesTab)->layout()->addWidget(addresses_);
  addresses_->show(); // at once, not in the next turn
  shares_->set_tools(kAddressesTab, addresses_->filter());
  connect(addresses_, &AddressPanel::place_wanted, canvas_, &Canvas::show_place);
  return *addresses_;
}

ReachPanel& MainWindow::reach() {
  if (reach_) return *reach_;
  reach_ = new ReachPanel(session_);
  reach_->set_theme(theme_);
  tabs_->widget(kReachTab)->layout()->addWidget(reach_);
  reach_->show();
  connect_reach();
  return *reach_;
}

InPlace& MainWindow::in_place() {
  if (!in_place_) in_place_ = new InPlace(*canvas_);
  return *in_place_;
}

} // namespace snug
