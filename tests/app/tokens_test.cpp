// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/look.h"
#include "app/look/tokens.h"

#include <QApplication>
#include <QFontDatabase>
#include <QFontInfo>
#include <QFontMetrics>

#include <cmath>
#include <gtest/gtest.h>
#include <string>
#include <vector>

using namespace quadrille::app;

namespace
{

/// Relative luminance and contrast ratio as WCAG 2.2 defines them (sRGB, threshold 0.04045).
double luminance(const QColor& colour)
{
    const auto linear = [](double channel) {
        return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

double contrast(const QColor& a, const QColor& b)
{
    const double one = luminance(a);
    const double other = luminance(b);
    return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

struct Pair {
    const char* name;
    QColor front;
    QColor ground;
};

/// Every pair of text and ground that a screen shows.
std::vector<Pair> textPairs(const Tokens& t)
{
    return {{"ink on desk", t.ink, t.desk},
            {"ink on sheet", t.ink, t.sheet},
            {"ink on band", t.ink, t.band},
            {"ink on tint", t.ink, t.tint},
            {"ink on changed", t.ink, t.changed},
            {"ink2 on desk", t.ink2, t.desk},
            {"ink2 on sheet", t.ink2, t.sheet},
            {"ink2 on band", t.ink2, t.band},
            {"ink2 on tint", t.ink2, t.tint},
            {"ink3 on desk", t.ink3, t.desk},
            {"ink3 on sheet", t.ink3, t.sheet},
            {"ink3 on band", t.ink3, t.band},
            {"ink3 on tint", t.ink3, t.tint},
            {"ink3 on changed", t.ink3, t.changed},
            {"mark on sheet", t.mark, t.sheet},
            {"mark on desk", t.mark, t.desk},
            {"mark on tint", t.mark, t.tint},
            {"onMark on mark", t.onMark, t.mark},
            {"onMark on a pressed primary button", t.onMark, t.ink2},
            {"hazard on sheet", t.hazard, t.sheet},
            {"hazard on tint", t.hazard, t.tint},
            {"miss on sheet", t.miss, t.sheet},
            {"good on sheet", t.good, t.sheet},
            {"good on desk", t.good, t.desk},
            {"warnInk on warnBand", t.warnInk, t.warnBand},
            {"warnInk on changed", t.warnInk, t.changed},
            {"warnInk on sheet", t.warnInk, t.sheet}};
}

/// Every mark, edge and sign that carries meaning; line and rule are decoration.
std::vector<Pair> markPairs(const Tokens& t)
{
    return {{"edge on sheet", t.edge, t.sheet},       {"edge on desk", t.edge, t.desk},
            {"edge on band", t.edge, t.band},         {"margin on sheet", t.margin, t.sheet},
            {"margin on desk", t.margin, t.desk},     {"mark on sheet", t.mark, t.sheet},
            {"mark on desk", t.mark, t.desk},         {"mark on band", t.mark, t.band},
            {"future on sheet", t.future, t.sheet},   {"future on desk", t.future, t.desk},
            {"dot on sheet", t.dot, t.sheet},         {"dot on desk", t.dot, t.desk},
            {"miss on sheet", t.miss, t.sheet},       {"miss on tint", t.miss, t.tint},
            {"hazard on mark", t.hazard, t.sheet},    {"warnLine on sheet", t.warnLine, t.sheet},
            {"warnLine on desk", t.warnLine, t.desk}, {"good on tint", t.good, t.tint}};
}

void expectContrast(const std::vector<Pair>& pairs, double least)
{
    for (const Pair& pair : pairs) {
        EXPECT_GE(contrast(pair.front, pair.ground), least) << pair.name;
    }
}

} // namespace

// WCAG 2.2, definition of contrast ratio: black on white is 21 : 1, a colour on itself 1 : 1.
TEST(Contrast, BlackOnWhiteIsTwentyOneToOne)
{
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
    EXPECT_NEAR(contrast(Qt::red, Qt::red), 1.0, 1e-9);
}

// WCAG 2.2, success criterion 1.4.3 (AA): 4.5 : 1 for text under 18 pt.
TEST(Contrast, TextCanBeReadInEveryScheme)
{
    for (const Tokens& tokens : {lightTokens(), darkTokens(), printTokens()}) {
        SCOPED_TRACE(static_cast<int>(tokens.scheme));
        expectContrast(textPairs(tokens), 4.5);
    }
}

// WCAG 2.2, success criterion 1.4.11 (AA): 3 : 1 for what is needed to see a control or a sign.
TEST(Contrast, MarksAndEdgesCanBeSeenInEveryScheme)
{
    for (const Tokens& tokens : {lightTokens(), darkTokens(), printTokens()}) {
        SCOPED_TRACE(static_cast<int>(tokens.scheme));
        expectContrast(markPairs(tokens), 3.0);
    }
}

TEST(Scheme, ADarkDesktopIsToldByItsPalette)
{
    QPalette desktop;
    desktop.setColor(QPalette::Window, QColor(40, 40, 44));
    desktop.setColor(QPalette::WindowText, QColor(230, 230, 230));
    EXPECT_EQ(schemeFor(SchemeChoice::asDesktop, desktop), Scheme::dark);
    desktop.setColor(QPalette::Window, QColor(240, 240, 240));
    desktop.setColor(QPalette::WindowText, QColor(20, 20, 20));
    EXPECT_EQ(schemeFor(SchemeChoice::asDesktop, desktop), Scheme::light);
}

TEST(Scheme, AChoiceOfThePersonGoesBeforeTheDesktop)
{
    const QPalette lightDesktop = paletteOf(lightTokens());
    const QPalette darkDesktop = paletteOf(darkTokens());
    EXPECT_EQ(schemeFor(SchemeChoice::dark, lightDesktop), Scheme::dark);
    EXPECT_EQ(schemeFor(SchemeChoice::light, darkDesktop), Scheme::light);
}

TEST(Scheme, PaintersFindTheTokensInThePalette)
{
    EXPECT_EQ(tokensOf(paletteOf(lightTokens())), lightTokens());
    EXPECT_EQ(tokensOf(paletteOf(darkTokens())), darkTokens());
}

TEST(TypeSizes, FiguresHaveOneWidthSoThatColumnsStandStraight)
{
    for (const auto style : {TextStyle::text, TextStyle::strong, TextStyle::title,
                             TextStyle::secondLine, TextStyle::axis}) {
        const QFontMetrics metrics(fontOf(style, 1.0));
        const int zero = metrics.horizontalAdvance(QLatin1Char('0'));
        for (char figure = '1'; figure <= '9'; ++figure) {
            EXPECT_EQ(metrics.horizontalAdvance(QLatin1Char(figure)), zero) << figure;
        }
    }
}

TEST(TypeSizes, TextGrowsWithTheFactor)
{
    EXPECT_EQ(fontOf(TextStyle::text, 1.0).pixelSize(), 13);
    EXPECT_EQ(fontOf(TextStyle::text, 2.0).pixelSize(), 26);
    EXPECT_EQ(scaled(64, 1.5), 96);
    EXPECT_EQ(scaled(1, 0.5), 1) << "a line never vanishes";
}
