#pragma once
// How the window looks: the palette of the diagram for every widget.

#include "core/layout/palette.h"

#include <QColor>
#include <QPalette>
#include <QString>

class QApplication;

namespace snug {

QColor colour(const Palette&, Ink);

// Light or dark, as the desktop's palette is (CONVENTIONS row 22).
Theme theme_of(const QPalette&);
// Style, font, palette and style sheet of the whole program.
void wear(QApplication&, Theme);
// The style sheet alone.
QString style_sheet(const Palette&);
// Whether the program looks as `wear` would make it look.
bool wears(const QApplication&, Theme);

// A widget under a style sheet is styled anew with all that it holds whenever it gets a parent. While the
// sheet is held back, `wear` leaves it out; put on, it styles each widget once. Nothing is held back where a
// window is shown already.
void hold_sheet_back(QApplication&);
void put_sheet_on(QApplication&);

} // namespace snug
