// What is done with what is chosen, and the menu that offers it.

#include "core/gesture/add.h"
#include "core/gesture/plug.h"
#include "core/text/hand_text.h"
#include "core/text/window_text.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/in_place.h"
#include "ui/outline/outline_panel.h"
#include "ui/panels/property_panel.h"
#include "ui/session/words.h"
#include "ui/window/main_window.h"
#include "ui/window/notice_bar.h"
#include "ui/window/sides.h"

#include <QAction>
#include <QMenu>

#include <algorithm>

namespace snug {

std::vector<MachineId> MainWindow::machines_chosen() const {
  std::vector<MachineId> out;
  for (const AnyId id : session_.selection())
    if (id.kind == Kind::machine) out.push_back({id.number});
  return out;
}

void MainWindow::remove_chosen() {
  if (session_.selection().empty()) return;
  session_.seal();
  const std::vector<AnyId> gone = session_.selection();
  const QString what = gone.size() == 1
                           ? words(text::removed_one, name_of(session_.lab(), gone.front()))
                           : words(text::removed_several, Count{static_cast<std::int64_t>(gone.size())});
  if (!session_.perform(remove_elements(session_.lab(), gone))) return;
  notice_->show_notice({Notice::Kind::told, what}, {{words(text::notice_undo), [this] { session_.undo(); }}});
}

void MainWindow::duplicate_chosen() {
  auto added = duplicate(session_.lab(), machines_chosen());
  if (!added) return session_.tell(added.error());
  session_.seal();
  if (session_.perform(std::move(added->edit))) session_.select({added->id});
}

void MainWindow::power_chosen(bool on) {
  session_.seal();
  session_.perform(set_power(session_.lab(), session_.exercise(), machines_chosen(), on));
}

// Some of them are, some not: all are from now on.
void MainWindow::hold_chosen() {
  session_.seal();
  session_.perform(hold_in_place(session_.lab(), machines_chosen(), !are_held()));
  action("hold")->setChecked(are_held()); // the click has turned it
}

bool MainWindow::are_held() const {
  const std::vector<MachineId> ids = machines_chosen();
  return !ids.empty() && std::all_of(ids.begin(), ids.end(), [this](MachineId id) {
    return snug::find<Machine>(session_.lab(), id)->pinned;
  });
}

void MainWindow::toggle_socket() {
  const AnyId id = session_.selection().empty() ? AnyId{} : session_.selection().front();
  const Segment* s =
      id.kind == Kind::segment ? snug::find<Segment>(session_.lab(), SegmentId{id.number}) : nullptr;
  if (!s) return;
  session_.seal();
  session_.perform(set_socket(session_.lab(), s->id, !s->pc_socket));
}

void MainWindow::fill_move_menu(QMenu& menu) {
  menu.clear();
  const auto offer = [&](MachineId carrier, const QString& name) {
    auto edit =
        move_machines(session_.lab(), outermost(session_.lab(), session_.selection()), {carrier, 0, {}});
    QAction* a = menu.addAction(name);
    const auto chosen = machines_chosen();
    const bool all_there = std::all_of(chosen.begin(), chosen.end(), [&](MachineId id) {
      return snug::find<Machine>(session_.lab(), id)->carrier == carrier;
    });
    a->setCheckable(all_there); // a tick where they are
    a->setChecked(all_there);
    a->setEnabled(edit.has_value() && !all_there);
    if (!edit || all_there) return;
    connect(a, &QAction::triggered, this, [this, e = std::move(*edit)] {
      session_.seal();
      session_.perform(e);
    });
  };
  offer({}, as_qt(session_.lab().pc.name));
  for (const std::uint32_t h : session_.analysis().index().hypervisors()) {
    const MachineId id = session_.lab().machines[h].id;
    offer(id, as_qt(name_of(session_.lab(), id)));
  }
}

void MainWindow::fill_connect_menu(QMenu& menu) {
  menu.clear();
  for (const Segment& s : session_.lab().segments)
    connect(menu.addAction(as_qt(name_of(session_.lab(), s.id))), &QAction::triggered, this,
            [this, id = s.id] {
              session_.seal();
              const auto machines = machines_chosen();
              if (machines.empty()) return;
              auto added = add_cards(session_.lab(), machines, id);
              if (!added) return session_.tell(added.error());
              session_.perform(std::move(added->edit)); // the machines stay chosen: for the next segment
            });
}

void MainWindow::show_menu(AnyId id, QPoint global) {
  QMenu menu(this);
  const auto put = [&](std::initializer_list<const char*> names) {
    for (const char* name : names)
      if (action(name)->isEnabled()) menu.addAction(action(name));
  };
  if (!id || id.kind == Kind::pc)
    put({"paste", "show_all", "tidy", "addresses", "select_all", "hand_out"});
  else
    put({"rename", "cut", "copy", "paste", "duplicate", "remove", "switch_on", "switch_off", "socket",
         "gateway", "dhcp_server", "hold", "own_row", "keep_part", "ask_reach"});
  if (action("carry")->isEnabled()) fill_carry_menu(*menu.addMenu(words(text::menu_carry)));
  if (id.kind == Kind::machine) {
    menu.addSeparator();
    fill_move_menu(*menu.addMenu(words(text::menu_move)));
    fill_connect_menu(*menu.addMenu(words(text::menu_connect)));
  }
  menu.exec(global);
}

// On the picture, unless the hand is in the outline; what the picture does not show, in its properties.
void MainWindow::edit(AnyId id) {
  if (outline_->view().hasFocus()) return edit_in_outline(id);
  if (box_of(canvas_->drawing(), id).w != 0) return in_place().edit(id);
  session_.select({id});
  sides_->show_properties();
  properties_->edit("name");
}

void MainWindow::edit_in_outline(AnyId id) {
  sides_->show_outline();
  outline_->view().edit_name(id);
}

} // namespace snug
