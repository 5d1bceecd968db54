// SPDX-License-Identifier: GPL-3.0-or-later
// Puts a scheme and a text size onto the application, and gives painters the colours back.
#pragma once

#include "app/look/tokens.h"

#include <QFont>
#include <QPalette>

class QApplication;

namespace quadrille::app
{

/// The palette that carries a scheme to every widget.
QPalette paletteOf(const Tokens& tokens);
/// True when window text is lighter than the window: how a dark desktop is told, since Qt 6.4 does
/// not say.
bool isDark(const QPalette& palette);
/// The tokens behind a widget's palette, for painters: light or dark.
Tokens tokensOf(const QPalette& palette);

/// The scheme a choice means on a desktop with this palette.
Scheme schemeFor(SchemeChoice choice, const QPalette& desktop);
Tokens tokensFor(Scheme scheme);

/// The font of a sort of text; `factor` 1.0 is 100 %. Noto Sans and Noto Serif, else DejaVu. The
/// figures of all four are of one width, so columns of numbers stand straight.
QFont fontOf(TextStyle style, double factor);
/// Px at 100 % to px at `factor`, at least 1.
int scaled(int px, double factor);
/// The factor that is applied now, read from the application's font; 1.0 before any was applied.
double appliedFactor();

/// The application's look. One object, made at start before anything changes the palette.
class Look
{
public:
    /// Remembers the desktop's palette of `application`, which outlives this.
    explicit Look(QApplication& application);

    /// Palette, style and font of the whole application; everything shown is drawn anew. `factor`
    /// is the text size, 0.5 to 3.
    void apply(SchemeChoice choice, double factor = 1.0);
    const Tokens& tokens() const { return m_tokens; }

private:
    QApplication& m_application;
    QPalette m_desktop;
    Tokens m_tokens;
};

} // namespace quadrille::app
