#pragma once
// Paints a drawing with Qt, shape by shape in its order.

#include "core/layout/drawing.h"
#include "core/layout/palette.h"

#include <QFont>
#include <QPainter>

namespace snug {

// Inter as the system has it, without hinting and kerning, so that letters have the width that core counted
// on. `size` is in pixels.
QFont diagram_font(int size, Weight);

// One unit of the painter is one pixel of the drawing. Text is squeezed or stretched to the width that the
// layout gave it. The painter's state is as before afterwards.
void paint(QPainter&, const Drawing&, const Palette&);
void paint(QPainter&, const AnyShape&, const Palette&);

} // namespace snug
