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

} // namespace snug
