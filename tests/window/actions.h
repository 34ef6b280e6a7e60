#pragma once
// What the menus of a window offer.

#include "ui/window/main_window.h"

#include <QAction>
#include <QMenu>
#include <QMenuBar>

#include <vector>

namespace snug::test {

struct MenuAction {
  QAction* action;
  QString in; // the menu, with those it is in
};

inline QString bare_text(const QAction& a) { return a.text().remove(QLatin1Char('&')); }

// With menus in menus, which are filled as if they were opened.
inline std::vector<MenuAction> actions_of(QMenu& menu, const QString& in) {
  std::vector<MenuAction> out;
  emit menu.aboutToShow();
  for (QAction* a : menu.actions()) {
    if (a->isSeparator()) continue;
    out.push_back({a, in});
    if (!a->menu()) continue;
    const auto inner = actions_of(*a->menu(), in + QLatin1Char('/') + bare_text(*a));
    out.insert(out.end(), inner.begin(), inner.end());
  }
  return out;
}

inline std::vector<MenuAction> menu_actions(MainWindow& window) {
  std::vector<MenuAction> out;
  for (QAction* a : window.menuBar()->actions()) {
    out.push_back({a, {}});
    const auto inner = actions_of(*a->menu(), bare_text(*a));
    out.insert(out.end(), inner.begin(), inner.end());
  }
  return out;
}

} // namespace snug::test
