#pragma once
// Every text that a window shows or speaks, and those that have too little room.

#include <QString>
#include <QWidget>

#include <vector>

namespace snug::test {

struct ScreenText {
  QString where; // class, name and property
  QString text;
};

// Of all widgets below, seen or not: texts, hints, tabs, menus, tooltips, what is spoken, items and headers.
std::vector<ScreenText> texts_of(QWidget& window);
// Of the widgets that are seen: where a text needs more room than it has, or widgets lie over each other.
std::vector<QString> squeezed(QWidget& window);

} // namespace snug::test
