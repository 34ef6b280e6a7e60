// The panel about reach among the others: from the picture to a question, from a promise to its finding and
// back.

#include "core/reach/askable.h"
#include "ui/canvas/canvas.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/reach_panel.h"
#include "ui/window/main_window.h"
#include "ui/window/shares.h"
#include "ui/window/sides.h"

namespace snug {

void MainWindow::connect_reach() {
  connect(reach_, &ReachPanel::way_changed, canvas_, &Canvas::show_way);
  connect(reach_, &ReachPanel::place_wanted, canvas_, &Canvas::show_place);
  connect(reach_, &ReachPanel::change_wanted, this, [this](PromiseId id) {
    session_.select({id});
    sides_->show_properties();
    if (QWidget* first = properties_->editor("from")) first->setFocus(Qt::ShortcutFocusReason);
  });
  connect(reach_, &ReachPanel::finding_wanted, this, [this](const QString& rule, PromiseId id) {
    shares_->show(kFindingsTab);
    findings_->show_finding(rule, id);
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
  shares_->show(kReachTab);
  reach().ask(ends->first, ends->second);
}

} // namespace snug
