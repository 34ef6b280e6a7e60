// The keys of actions, changed by a person.

#include "core/text/keys_text.h"
#include "ui/session/words.h"
#include "ui/window/main_window.h"
#include "ui/window/shortcut_table.h"
#include "ui/window/shortcut_view.h"

namespace snug {

void MainWindow::make_shortcuts() {
  shortcuts_ =
      new ShortcutTable(*this, settings_, [this](const Result<void>& done) { remember_recent(done); });
}

void MainWindow::change_keys() {
  if (!shortcut_view_) shortcut_view_ = new ShortcutView(*shortcuts_, this);
  shortcut_view_->show();
  shortcut_view_->raise();
  shortcut_view_->activateWindow();
}

void MainWindow::take_keys() {
  const QStringList dropped = shortcuts_->take();
  if (dropped.isEmpty()) return;
  session_.tell(Notice::Kind::caution,
                words(text::keys_unusable, dropped.join(QStringLiteral(", ")).toStdString()));
}

} // namespace snug
