#include "core/addressing/plan.h"
#include "core/gesture/bands.h"
#include "core/gesture/rails.h"
#include "core/layout/tidy.h"
#include "core/text/access_text.h"
#include "core/text/clip_text.h"
#include "core/text/extras_text.h"
#include "core/text/find_text.h"
#include "core/text/hand_text.h"
#include "core/text/help_text.h"
#include "core/text/keep_text.h"
#include "core/text/keys_text.h"
#include "core/text/outline_text.h"
#include "core/text/own_starts_text.h"
#include "core/text/reach_panel_text.h"
#include "core/text/window_text.h"
#include "ui/canvas/canvas.h"
#include "ui/outline/outline_panel.h"
#include "ui/panels/address_panel.h"
#include "ui/panels/own_parts_view.h"
#include "ui/panels/parts_panel.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/window/find_box.h"
#include "ui/window/help_view.h"
#include "ui/window/main_window.h"
#include "ui/window/notice_bar.h"
#include "ui/window/shares.h"
#include "ui/window/sides.h"

#include <QAction>
#include <QMenu>
#include <QMenuBar>

#include <algorithm>

namespace snug {

QAction* MainWindow::action(const char* name) const { return findChild<QAction*>(QLatin1String(name)); }

QAction* MainWindow::add(QMenu& menu, const char* name, const Template& words_of, const QKeySequence& keys,
                         std::function<void()> act) {
  auto* a = new QAction(words(words_of), this);
  a->setObjectName(QLatin1String(name));
  a->setShortcut(keys);
  if (!keys.isEmpty())
    a->setToolTip(words(words_of).remove(QLatin1Char('&')) + QStringLiteral(" (") +
                  keys.toString(QKeySequence::NativeText) + QLatin1Char(')'));
  connect(a, &QAction::triggered, this, [act = std::move(act)] { act(); });
  menu.addAction(a);
  return a;
}

void MainWindow::make_actions() {
  using K = Qt::Key;
  menuBar()->setAccessibleName(words(text::access_menus));
  QMenu& file = *menuBar()->addMenu(words(text::menu_file));
  add(file, "new", text::act_new, Qt::CTRL | K::Key_N,
      [this] { unless_unsaved([this] { start_blank(false); }); });
  add(file, "open", text::act_open, Qt::CTRL | K::Key_O, [this] { ask_open(); });
  add(file, "start_page", text::act_start, {}, [this] { show_start(); });
  file.addSeparator();
  add(file, "save", text::act_save, Qt::CTRL | K::Key_S, [this] { save(); });
  add(file, "save_as", text::act_save_as, Qt::CTRL | Qt::SHIFT | K::Key_S, [this] { save_as(); });
  add(file, "keep_start", text::act_keep_start, {}, [this] { keep_start(); });
  add(file, "hand_out", text::act_hand_out, Qt::CTRL | K::Key_E, [this] { hand_out(); });
  file.addSeparator();
  add(file, "about_lab", text::act_about_lab, {}, [this] { show_lab(); });
  file.addSeparator();
  add(file, "quit", text::act_quit, Qt::CTRL | K::Key_Q, [this] { close(); });
  make_edit_actions(*menuBar()->addMenu(words(text::menu_edit)));
  make_plan_actions(*menuBar()->addMenu(words(text::menu_plan)));
  QMenu& view = *menuBar()->addMenu(words(text::menu_view));
  view.setObjectName(QStringLiteral("view_menu"));
  make_view_actions(view);
  make_help_actions(*menuBar()->addMenu(words(text::menu_help)));
}

void MainWindow::make_edit_actions(QMenu& change) {
  using K = Qt::Key;
  add(change, "undo", text::act_undo, Qt::CTRL | K::Key_Z, [this] { session_.undo(); });
  add(change, "redo", text::act_redo, Qt::CTRL | Qt::SHIFT | K::Key_Z, [this] {
    session_.redo();
  })->setShortcuts({Qt::CTRL | Qt::SHIFT | K::Key_Z, Qt::CTRL | K::Key_Y});
  change.addSeparator();
  add(change, "rename", text::act_rename, K::Key_F2, [this] {
    if (!session_.selection().empty()) edit(session_.selection().front());
  });
  add(change, "duplicate", text::act_duplicate, Qt::CTRL | Qt::SHIFT | K::Key_D,
      [this] { duplicate_chosen(); });
  add(change, "remove", text::act_remove, K::Key_Delete, [this] { remove_chosen(); });
  change.addSeparator();
  add(change, "cut", text::act_cut, Qt::CTRL | K::Key_X, [this] { cut_chosen(); });
  add(change, "copy", text::act_copy, Qt::CTRL | K::Key_C, [this] { copy_chosen(); });
  add(change, "paste", text::act_paste_here, Qt::CTRL | K::Key_V, [this] { open_clipboard(); });
  QMenu* cells = change.addMenu(words(text::menu_address_cells));
  cells->menuAction()->setObjectName(QStringLiteral("address_cells"));
  connect(cells, &QMenu::aboutToShow, this, [this, cells] {
    if (addresses_) addresses_->fill(*cells);
  });
  add(change, "copy_table", text::act_copy_table, {}, [this] { copy_table(); });
  add(change, "copy_notice", text::act_copy_notice, {}, [this] { notice_->copy(); });
  add(change, "copy_picture", text::act_copy_picture, Qt::CTRL | Qt::SHIFT | K::Key_C,
      [this] { copy_picture(); });
  add(change, "find_anything", text::find_open, Qt::CTRL | K::Key_K, [this] {
    find_->setFocus(Qt::ShortcutFocusReason);
    find_->selectAll();
  });
  add(change, "select_all", text::act_select_all, Qt::CTRL | K::Key_A, [this] {
    std::vector<AnyId> ids;
    for (const Machine& m : session_.lab().machines) ids.push_back(m.id);
    session_.select(std::move(ids));
  });
}

// What is done to the lab and to what is chosen in it.
void MainWindow::make_plan_actions(QMenu& plan) {
  using K = Qt::Key;
  add(plan, "switch_on", text::act_on, Qt::CTRL | K::Key_I, [this] { power_chosen(true); });
  add(plan, "switch_off", text::act_off, Qt::CTRL | Qt::SHIFT | K::Key_I, [this] { power_chosen(false); });
  QMenu* move = plan.addMenu(words(text::menu_move));
  move->menuAction()->setObjectName(QStringLiteral("move_to"));
  connect(move, &QMenu::aboutToShow, this, [this, move] { fill_move_menu(*move); });
  QMenu* plug = plan.addMenu(words(text::menu_connect));
  plug->menuAction()->setObjectName(QStringLiteral("connect_to"));
  connect(plug, &QMenu::aboutToShow, this, [this, plug] { fill_connect_menu(*plug); });
  QMenu* more = plan.addMenu(words(text::menu_add));
  more->menuAction()->setObjectName(QStringLiteral("add_to_plan"));
  make_add_actions(*more);
  make_own_part_actions(plan);
  make_duty_actions(plan);
  add(plan, "addresses", text::act_addresses, Qt::CTRL | Qt::SHIFT | K::Key_A, [this] {
    session_.seal();
    session_.perform(suggest_addresses(session_.lab()));
  });
  add(plan, "earlier", text::act_earlier, {}, [this] {
    shift_chosen(false);
  })->setShortcuts({Qt::ALT | K::Key_Left, Qt::ALT | K::Key_Up});
  add(plan, "later", text::act_later, {}, [this] {
    shift_chosen(true);
  })->setShortcuts({Qt::ALT | K::Key_Right, Qt::ALT | K::Key_Down});
  add(plan, "tidy", text::act_tidy, Qt::CTRL | K::Key_T, [this] { tidy_up(); });
}

void MainWindow::shift_chosen(bool later) {
  if (const auto band = whole_band(session_.lab(), session_.selection()))
    session_.perform(shift_band(session_.lab(), *band, later));
  else if (session_.selection().size() == 1)
    session_.perform(shift(session_.lab(), session_.selection().front(), later));
}

void MainWindow::tidy_up() {
  const Edit edit = tidy(session_.analysis());
  if (edit.steps.empty()) return session_.tell(Notice::Kind::told, words(text::tidy_already));
  const Drawing before = canvas_->drawing();
  const std::int64_t crossed = tidiness(session_.analysis()).crossings;
  session_.seal();
  if (!session_.perform(edit)) return;
  canvas_->glide_from(before);
  const std::int64_t crosses = tidiness(session_.analysis()).crossings;
  const QString done = crosses == crossed
                           ? words(text::tidy_shorter, std::to_string(crosses))
                           : words(text::tidy_done, std::to_string(crosses), std::to_string(crossed));
  notice_->show_notice({Notice::Kind::told, done}, {{words(text::notice_undo), [this] { session_.undo(); }}});
}

HelpView& MainWindow::help() {
  if (!help_) help_ = new HelpView(*this);
  return *help_;
}

void MainWindow::make_help_actions(QMenu& help) {
  const auto page = [this](HelpView::Page wanted) {
    return [this, wanted] { this->help().open_at(wanted); };
  };
  add(help, "help_words", text::act_help_words, Qt::Key_F1, page(HelpView::Page::words));
  add(help, "help_keys", text::act_help_keys, {}, page(HelpView::Page::keys));
  add(help, "change_keys", text::act_change_keys, {}, [this] { change_keys(); });
  add(help, "about", text::act_about, {}, page(HelpView::Page::about));
}

void MainWindow::make_view_actions(QMenu& view) {
  using K = Qt::Key;
  add(view, "show_all", text::act_show_all, Qt::CTRL | K::Key_0, [this] { canvas_->show_all(); });
  add(view, "larger", text::act_larger, Qt::CTRL | K::Key_Plus, [this] {
    canvas_->zoom_by(1.2);
  })->setShortcuts({Qt::CTRL | K::Key_Plus, Qt::CTRL | K::Key_Equal});
  add(view, "smaller", text::act_smaller, Qt::CTRL | K::Key_Minus, [this] { canvas_->zoom_by(1 / 1.2); });
  add(view, "show_findings", text::act_findings, Qt::ALT | K::Key_1, [this] { shares_->show(kFindingsTab); });
  add(view, "show_addresses", text::act_table, Qt::ALT | K::Key_2, [this] { shares_->show(kAddressesTab); });
  add(view, "show_parts", text::act_parts, Qt::ALT | K::Key_3, [this] {
    sides_->show_parts();
    parts_->take_keyboard();
  });
  add(view, "show_outline", text::act_outline, Qt::ALT | K::Key_4, [this] {
    sides_->show_outline();
    outline_->view().setFocus(Qt::ShortcutFocusReason);
  });
  add(view, "show_reach", text::act_reach, Qt::ALT | K::Key_5, [this] { shares_->show(kReachTab); });
  add(view, "show_properties", text::act_properties, Qt::ALT | K::Key_6,
      [this] { sides_->show_properties(); });
  add(view, "ask_reach", text::act_can_they_talk, Qt::CTRL | K::Key_R, [this] { ask_chosen(); });
  QMenu* compare = view.addMenu(words(text::menu_compare));
  compare->menuAction()->setObjectName(QStringLiteral("compare_with"));
  connect(compare, &QMenu::aboutToShow, this, [this, compare] { fill_compare_menu(*compare); });
  make_colours_menu(view);
}

// Which exercise the ruler shows beside the chosen one.
void MainWindow::fill_compare_menu(QMenu& menu) {
  menu.clear();
  const auto offer = [&](const QString& name, std::optional<ExerciseId> other) {
    QAction* a = menu.addAction(name, this, [this, other] { ruler_->compare_with(other); });
    a->setCheckable(true);
    a->setChecked(ruler_->compared() == other);
    a->setEnabled(!other || *other != session_.exercise());
  };
  offer(words(text::compare_none), std::nullopt);
  offer(words(text::exercise_all_on), ExerciseId{});
  for (const Exercise& e : session_.lab().exercises) offer(as_qt(name_of(session_.lab(), e.id)), e.id);
}

void MainWindow::refresh_actions() {
  const QString undo = session_.undo_words(), redo = session_.redo_words();
  const auto name = [this](const char* action_name, const Template& bare, const QString& step) {
    QAction* a = action(action_name);
    a->setEnabled(!step.isEmpty());
    a->setToolTip(step.isEmpty() ? words(bare).remove(QLatin1Char('&'))
                                 : words(bare).remove(QLatin1Char('&')) + QStringLiteral(": ") + step);
    a->setStatusTip(step);
  };
  name("undo", text::act_undo, undo);
  name("redo", text::act_redo, redo);
  const auto is_single = [](AnyId id) { // there is one of it, which stays
    return id.kind == Kind::lab || id.kind == Kind::pc || id.kind == Kind::numbering ||
           id.kind == Kind::rules;
  };
  const std::vector<AnyId>& chosen = session_.selection();
  const bool any = !chosen.empty() && std::none_of(chosen.begin(), chosen.end(), is_single);
  const bool machines = !machines_chosen().empty();
  for (const char* a : {"rename", "remove"}) action(a)->setEnabled(any);
  for (const char* a : {"duplicate", "move_to", "connect_to", "cut", "copy", "hold", "keep_part"})
    action(a)->setEnabled(machines);
  action("address_cells")->setEnabled(addresses_ != nullptr);
  action("own_parts_menu")->setEnabled(!parts_->own().parts().empty());
  action("hold")->setChecked(are_held());
  const Exercise* shown = snug::find<Exercise>(session_.lab(), session_.exercise());
  const auto is_on = [shown](MachineId m) {
    return std::find(shown->on.begin(), shown->on.end(), m) != shown->on.end();
  };
  const std::vector<MachineId> all = machines_chosen();
  action("switch_on")->setEnabled(shown && !std::all_of(all.begin(), all.end(), is_on));
  action("switch_off")->setEnabled(shown && std::any_of(all.begin(), all.end(), is_on));
  const bool in_order =
      whole_band(session_.lab(), chosen).has_value() ||
      (session_.selection().size() == 1 && (machines || session_.selection().front().kind == Kind::segment));
  for (const char* a : {"earlier", "later"}) action(a)->setEnabled(in_order);
  action("ask_reach")->setEnabled(two_chosen().has_value());
  action("own_row")->setEnabled(machines);
  refresh_duties();
  action("socket")->setEnabled(any && session_.selection().front().kind == Kind::segment);
}

} // namespace snug
