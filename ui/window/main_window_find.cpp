#include "core/text/find_text.h"
#include "ui/canvas/canvas.h"
#include "ui/panels/findings_panel.h"
#include "ui/session/words.h"
#include "ui/window/find_box.h"
#include "ui/window/help_view.h"
#include "ui/window/main_window.h"
#include "ui/window/shares.h"

#include <QAction>
#include <QMenu>
#include <QMenuBar>

namespace snug {

namespace {

QString bare(QString text) { return text.remove(QLatin1Char('&')).remove(QStringLiteral("…")); }

// Of a menu in a menu: "Move to: deck-b". `in` names the menu in the bar.
void collect(const QMenu& menu, const QString& in, const QString& before, std::vector<FindBox::Action>& out) {
  for (QAction* a : menu.actions()) {
    if (a->isSeparator() || !a->isEnabled() || !a->isVisible() || a->text().isEmpty()) continue;
    const QString title = before + bare(a->text());
    if (QMenu* inner = a->menu()) {
      emit inner->aboutToShow(); // some are filled when they are opened
      collect(*inner, in, title + QStringLiteral(": "), out);
      continue;
    }
    const QString keys = a->shortcut().toString(QKeySequence::NativeText);
    out.push_back({a, title, keys.isEmpty() ? in : in + QStringLiteral("  ") + keys});
  }
}

} // namespace

QWidget* MainWindow::make_find() {
  const auto actions = [this] {
    std::vector<FindBox::Action> all;
    for (const QAction* a : menuBar()->actions())
      if (a->menu()) collect(*a->menu(), bare(a->text()), {}, all);
    return all;
  };
  find_ = new FindBox(session_, actions, this);
  connect(find_, &FindBox::left, this, [this] { canvas_->setFocus(); });
  connect(find_, &FindBox::chosen, this, &MainWindow::go_to);
  return find_;
}

void MainWindow::go_to(const FindItem& item) {
  if (item.kind == Findable::exercise) return session_.set_exercise(ExerciseId{item.id.number});
  if (item.kind == Findable::word) return help().open_word(item.place);
  if (item.kind == Findable::finding) {
    const Finding& f = session_.analysis().findings()[item.place];
    shares_->show(kFindingsTab);
    findings_->show_finding(as_qt(f.rule->id), item.id);
  } else {
    session_.select({item.id});
  }
  if (item.id) canvas_->show_place(item.id);
}

} // namespace snug
