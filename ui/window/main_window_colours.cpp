// Light and dark: as the desktop, or as chosen in the View menu.

#include "core/text/window_text.h"
#include "ui/canvas/canvas.h"
#include "ui/panels/address_panel.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/parts_panel.h"
#include "ui/panels/property_panel.h"
#include "ui/panels/reach_panel.h"
#include "ui/ruler/ruler.h"
#include "ui/session/words.h"
#include "ui/theme/theme.h"
#include "ui/window/exercise_strip.h"
#include "ui/window/main_window.h"

#include <QActionGroup>
#include <QApplication>
#include <QMenu>

namespace snug {

namespace {

// What the desktop asks for when nothing of ours is worn.
Theme desktop_theme() {
  QApplication::setPalette(QPalette());
  return theme_of(QApplication::palette());
}

} // namespace

void MainWindow::make_colours_menu(QMenu& view) {
  QMenu& menu = *view.addMenu(words(text::menu_colours));
  auto* group = new QActionGroup(this);
  const auto add_choice = [&](const char* name, const Template& words_of, Colours colours) {
    QAction* a = menu.addAction(words(words_of));
    a->setObjectName(QLatin1String(name));
    a->setCheckable(true);
    a->setActionGroup(group);
    a->setChecked(colours == colours_);
    connect(a, &QAction::triggered, this, [this, colours] {
      choose_colours(colours);
      remember_recent(settings_.change([colours](Remembered& r) { r.colours = colours; }));
    });
  };
  add_choice("colours_desktop", text::colours_desktop, Colours::desktop);
  add_choice("colours_light", text::colours_light, Colours::light);
  add_choice("colours_dark", text::colours_dark, Colours::dark);
}

void MainWindow::choose_colours(Colours colours) {
  colours_ = colours;
  for (const auto& [name, of] : {std::pair{"colours_desktop", Colours::desktop},
                                 {"colours_light", Colours::light},
                                 {"colours_dark", Colours::dark}})
    action(name)->setChecked(of == colours);
  dress();
}

void MainWindow::dress() {
  if (dressing_) return;
  dressing_ = true;
  const Theme theme = colours_ == Colours::light  ? Theme::light
                      : colours_ == Colours::dark ? Theme::dark
                                                  : desktop_theme();
  wear(*qApp, theme);
  set_theme(theme);
  dressing_ = false;
}

void MainWindow::set_theme(Theme theme) {
  theme_ = theme;
  canvas_->set_theme(theme);
  ruler_->set_theme(theme);
  findings_->set_theme(theme);
  if (addresses_) addresses_->set_theme(theme);
  exercises_->set_theme(theme);
  parts_->set_theme(theme);
  if (reach_) reach_->set_theme(theme);
  properties_->set_theme(theme);
  mark_findings();
}

// Another palette of the program: the sheet and what is painted follow it. A change of the desktop reaches
// windows only, since the program wears a palette of its own.
bool MainWindow::event(QEvent* event) {
  if (event->type() == QEvent::ThemeChange && colours_ == Colours::desktop) dress();
  if (event->type() == QEvent::ApplicationPaletteChange && !dressing_) {
    dressing_ = true;
    const Theme theme = colours_ == Colours::light  ? Theme::light
                        : colours_ == Colours::dark ? Theme::dark
                                                    : theme_of(QApplication::palette());
    if (!wears(*qApp, theme)) wear(*qApp, theme);
    set_theme(theme);
    dressing_ = false;
  }
  return QMainWindow::event(event);
}

} // namespace snug
