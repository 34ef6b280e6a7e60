// The panel about reach among the others: from the picture to a question, from a promise to its finding and
// back.

#include "core/reach/askable.h"
#include "ui/canvas/canvas.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/reach_panel.h"
#include "ui/window/main_window.h"

#include <QTabWidget>

namespace snug {

void MainWindow::connect_reach() {
  connect(reach_, &ReachPanel::way_changed, canvas_, &Canvas::show_way);
  connect(reach_, &ReachPanel::place_wanted, canvas_, &Canvas::show_place);
  connect(reach_, &ReachPanel::change_wanted, this, [this](PromiseId id) {
    session_.select({id});
    if (QWidget* first = properties_->editor("from")) first->setFocus(Qt::ShortcutFocusReason);
  });
  connect(reach_, &ReachPanel::finding_wanted, this, [this](const QString& rule, PromiseId id) {
    tabs_->setCurrentWidget(findings_);
    findings_->show_finding(rule, id);
  });
  connect(findings_, &FindingsPanel::promise_wanted, this, [this](PromiseId id) {
    tabs_->setCurrentWidget(reach_);
    reach_->show_promise(id);
  });
}

std::optional<std::pair<AnyId, AnyId>> MainWindow::two_chosen() const {
  std::vector<AnyId> ends;
  for (const AnyId id : session_.selection())
    if (is_askable(session_.lab(), id)) ends.push_back(id);
  if (ends.size() != 2 || session_.selection().size() != 2) return std::nullopt;
  return std::pair{ends[0], ends[1]};
}

void MainWindow::ask_chosen() {
  const auto ends = two_chosen();
  if (!ends) return;
  tabs_->setCurrentWidget(reach_);
  reach_->ask(ends->first, ends->second);
}

} // namespace snug
