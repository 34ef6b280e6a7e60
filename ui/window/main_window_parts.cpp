// Machines that a person keeps for other labs.

#include "core/gesture/own_part.h"
#include "core/text/own_parts_text.h"
#include "core/text/window_text.h"
#include "ui/panels/own_parts_view.h"
#include "ui/panels/parts_panel.h"
#include "ui/session/words.h"
#include "ui/window/main_window.h"
#include "ui/window/notice_bar.h"
#include "ui/window/sides.h"

#include <QAction>
#include <QMenu>

namespace snug {

void MainWindow::make_own_part_actions(QMenu& menu) {
  add(menu, "keep_part", text::act_keep_part, {}, [this] { keep_part_chosen(); });
  QMenu* own = menu.addMenu(words(text::menu_own_parts));
  own->menuAction()->setObjectName(QStringLiteral("own_parts_menu"));
  connect(own, &QMenu::aboutToShow, this, [this, own] { parts_->own().fill(*own); });
}

void MainWindow::connect_own_parts() {
  for (const Problem& p : parts_->own().problems())
    session_.tell(Notice::Kind::caution, words(text::own_part_unreadable, words(p).toStdString()),
                  Notice::Until::never);
  connect(&parts_->own(), &OwnPartsView::kept, this, [this](const QString& name) {
    session_.tell(Notice::Kind::told, words(text::own_part_kept, name.toStdString()));
    refresh_actions();
  });
  connect(&parts_->own(), &OwnPartsView::removed, this, [this](const OwnPart& gone) {
    notice_->show_notice({Notice::Kind::told, words(text::own_part_removed, gone.name())},
                         {{words(text::own_part_bring_back), [this, gone] {
                             parts_->own().bring_back(gone);
                             refresh_actions();
                           }}});
    refresh_actions();
  });
}

// The name is typed where the part will stand.
void MainWindow::keep_part_chosen() {
  const std::vector<MachineId> chosen = machines_chosen();
  if (chosen.empty()) return;
  auto part = make_part(session_.lab(), session_.selection(), name_of(session_.lab(), chosen.front()));
  if (!part) return session_.tell(part.error());
  sides_->show_parts();
  parts_->own().keep(std::move(*part));
}

} // namespace snug
