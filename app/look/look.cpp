// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/look.h"

#include "app/look/sheet_style.h"

#include <QApplication>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace quadrille::app
{

namespace
{

const int textPx = typeSize(TextStyle::text).font;

void setDisabled(QPalette& palette, const Tokens& tokens)
{
    const auto disabled = QPalette::Disabled;
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText,
                            QPalette::HighlightedText, QPalette::Link}) {
        palette.setColor(disabled, role, tokens.ink3);
    }
    palette.setColor(disabled, QPalette::Base, tokens.band);
    palette.setColor(disabled, QPalette::Button, tokens.band);
    palette.setColor(disabled, QPalette::Highlight, tokens.band);
}

} // namespace

QPalette paletteOf(const Tokens& tokens)
{
    QPalette palette;
    palette.setColor(QPalette::Window, tokens.desk);
    palette.setColor(QPalette::WindowText, tokens.ink);
    palette.setColor(QPalette::Base, tokens.sheet);
    palette.setColor(QPalette::AlternateBase, tokens.band);
    palette.setColor(QPalette::Text, tokens.ink);
    palette.setColor(QPalette::PlaceholderText, tokens.ink3);
    palette.setColor(QPalette::Button, tokens.sheet);
    palette.setColor(QPalette::ButtonText, tokens.ink);
    palette.setColor(QPalette::BrightText, tokens.onMark);
    palette.setColor(QPalette::Highlight, tokens.tint);
    palette.setColor(QPalette::HighlightedText, tokens.ink);
    palette.setColor(QPalette::Link, tokens.mark);
    palette.setColor(QPalette::LinkVisited, tokens.mark);
    palette.setColor(QPalette::ToolTipBase, tokens.sheet);
    palette.setColor(QPalette::ToolTipText, tokens.ink);
    palette.setColor(QPalette::Light, tokens.sheet);
    palette.setColor(QPalette::Midlight, tokens.band);
    palette.setColor(QPalette::Mid, tokens.line);
    palette.setColor(QPalette::Dark, tokens.edge);
    palette.setColor(QPalette::Shadow, tokens.edge);
    setDisabled(palette, tokens);
    return palette;
}

bool isDark(const QPalette& palette)
{
    return palette.color(QPalette::WindowText).lightness() >
           palette.color(QPalette::Window).lightness();
}

Tokens tokensOf(const QPalette& palette)
{
    return isDark(palette) ? darkTokens() : lightTokens();
}

Scheme schemeFor(SchemeChoice choice, const QPalette& desktop)
{
    if (choice == SchemeChoice::asDesktop) {
        return isDark(desktop) ? Scheme::dark : Scheme::light;
    }
    return choice == SchemeChoice::dark ? Scheme::dark : Scheme::light;
}

Tokens tokensFor(Scheme scheme)
{
    switch (scheme) {
    case Scheme::light:
        return lightTokens();
    case Scheme::dark:
        return darkTokens();
    case Scheme::print:
        return printTokens();
    }
    return lightTokens();
}

QFont fontOf(TextStyle style, double factor)
{
    const bool serif = style == TextStyle::title || style == TextStyle::sheetTitle;
    const bool bold = serif || style == TextStyle::bigFigure || style == TextStyle::cue ||
                      style == TextStyle::cueWord || style == TextStyle::listName ||
                      style == TextStyle::strong;
    QFont font;
    font.setFamilies({serif ? QStringLiteral("Noto Serif") : QStringLiteral("Noto Sans"),
                      serif ? QStringLiteral("DejaVu Serif") : QStringLiteral("DejaVu Sans")});
    font.setStyleHint(serif ? QFont::Serif : QFont::SansSerif);
    font.setPixelSize(scaled(typeSize(style).font, factor));
    font.setBold(bold);
    return font;
}

int scaled(int px, double factor)
{
    return px <= 0 ? px : std::max(1, static_cast<int>(std::lround(px * factor)));
}

double appliedFactor()
{
    const int px = QApplication::font().pixelSize();
    return px > 0 ? static_cast<double>(px) / textPx : 1.0;
}

Look::Look(QApplication& application)
    : m_application(application)
    , m_desktop(QApplication::palette())
    , m_tokens(lightTokens())
{
}

void Look::apply(SchemeChoice choice, double factor)
{
    m_tokens = tokensFor(schemeFor(choice, m_desktop));
    const QFont font = fontOf(TextStyle::text, std::clamp(factor, 0.5, 3.0));
    m_application.setFont(font);
    // The palette first: the style polishes widgets with the colours of their roles on top of it.
    m_application.setPalette(paletteOf(m_tokens));
    m_application.setStyle(new SheetStyle(m_tokens, appliedFactor()));
    QToolTip::setFont(font);
    QToolTip::setPalette(paletteOf(m_tokens));
}

} // namespace quadrille::app
