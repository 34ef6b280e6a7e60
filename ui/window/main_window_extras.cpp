// The lab itself, and what a plan has beside machines and segments: how they come into it.

#include "core/gesture/extras.h"
#include "core/text/extras_text.h"
#include "ui/window/exercise_strip.h"
#include "ui/window/main_window.h"
#include "ui/window/sides.h"

#include <QAction>
#include <QMenu>

namespace snug {

void MainWindow::make_add_actions(QMenu& menu) {
  const auto offer = [&](const char* name, const Template& words_of, std::function<Added()> make) {
    add(menu, name, words_of, {}, [this, make = std::move(make)] { add_to_plan(make()); });
  };
  offer("add_exercise", text::act_add_exercise,
        [this] { return add_exercise(session_.lab(), session_.exercise()); });
  offer("add_lan", text::act_add_lan, [this] { return add_lan(session_.lab()); });
  offer("add_volume", text::act_add_volume, [this] { return add_volume(session_.lab()); });
  offer("add_place", text::act_add_place, [this] { return add_place(session_.lab()); });
  connect(exercises_, &ExerciseStrip::add_wanted, action("add_exercise"), &QAction::trigger);
  connect(exercises_, &ExerciseStrip::menu_wanted, this, [this](AnyId id, QPoint global) {
    session_.select({id});
    show_menu(id, global);
  });
}

// Its properties are next: what it is called, how large it is.
void MainWindow::add_to_plan(const Added& added) {
  session_.seal();
  if (!session_.perform(added.edit)) return;
  if (added.id.kind == Kind::exercise) session_.set_exercise(ExerciseId{added.id.number});
  session_.select({added.id});
  sides_->show_properties();
}

void MainWindow::show_lab() {
  session_.select({AnyId{Kind::lab, 0}});
  sides_->show_properties();
}

} // namespace snug
