// SPDX-License-Identifier: GPL-3.0-or-later
// The look in one file: every colour, type size, spacing and stroke. Nothing else in the program
// names a colour or a size of its own. Sizes are px at 96 dpi and 100 %; look.h scales them.
#pragma once

#include <QColor>

namespace quadrille::app
{

/// What the person chose; `asDesktop` follows the desktop's palette at start.
enum class SchemeChoice { asDesktop, light, dark };

/// One set of colours. `print` is black on white paper without meaning in pale fills.
enum class Scheme { light, dark, print };

/// The colours of one scheme, by what they are for. Text reaches 4.5 : 1 and marks 3 : 1 on their
/// grounds (WCAG 2.2, 1.4.3 and 1.4.11), which a test computes; `line` and `rule` are decoration.
struct Tokens {
    Scheme scheme = Scheme::light;
    QColor desk;     ///< the window
    QColor sheet;    ///< panels, rows, fields
    QColor band;     ///< heads of tables, disabled
    QColor tint;     ///< selection, current
    QColor changed;  ///< ground of a value that differs from the block before
    QColor ink;      ///< text
    QColor ink2;     ///< second line
    QColor ink3;     ///< captions, axes
    QColor edge;     ///< borders of fields and buttons, block limits
    QColor line;     ///< borders of sheets
    QColor rule;     ///< lattice, row lines, chart grid
    QColor margin;   ///< the margin line and nothing else
    QColor mark;     ///< done, primary button, links, focus
    QColor onMark;   ///< text on mark
    QColor future;   ///< outline of a day to come
    QColor dot;      ///< a day with nothing prescribed
    QColor miss;     ///< missed
    QColor hazard;   ///< skin mark, scar, harm and nothing else
    QColor warnBand; ///< ground of the warning strip, of unanswered
    QColor warnInk;  ///< text on it
    QColor warnLine; ///< border of a field outside its range
    QColor good;     ///< tick, step-up sign
    friend bool operator==(const Tokens&, const Tokens&) = default;
};

Tokens lightTokens();
Tokens darkTokens();
Tokens printTokens();

/// The sorts of text on the screen.
enum class TextStyle {
    title,      ///< title of a screen, name of the patient in the record: serif, bold
    bigFigure,  ///< the one figure a sheet is about
    cue,        ///< seconds of the cue, to be read across a room
    cueWord,    ///< its phase
    sheetTitle, ///< head of an empty page: serif, bold, smaller
    listName,   ///< names in a list: bold
    text,
    strong, ///< text, bold
    secondLine,
    axis, ///< axes, marks in the grid's head
};

struct TypeSize {
    int font = 13; ///< px
    int line = 18; ///< px from base line to base line
};

/// Size of a sort of text at 100 %.
constexpr TypeSize typeSize(TextStyle style)
{
    switch (style) {
    case TextStyle::title:
        return {21, 28};
    case TextStyle::bigFigure:
        return {24, 30};
    case TextStyle::cue:
        return {56, 64};
    case TextStyle::cueWord:
        return {40, 48};
    case TextStyle::sheetTitle:
        return {17, 24};
    case TextStyle::listName:
        return {14, 20};
    case TextStyle::text:
    case TextStyle::strong:
        return {13, 18};
    case TextStyle::secondLine:
        return {12, 16};
    case TextStyle::axis:
        return {11, 14};
    }
    return {};
}

/// Sorts of text on paper, pt.
namespace paper
{
struct PointSize {
    double font = 10; ///< pt
    double line = 14; ///< pt
};
inline constexpr PointSize text{14, 19.5};
inline constexpr double least = 10; ///< nothing on a handout is smaller
inline constexpr PointSize stepHead{15, 19.5};
inline constexpr PointSize title{28, 34};
inline constexpr PointSize bigNumber{50, 56};
inline constexpr PointSize largeText{20, 27};
inline constexpr PointSize largeBigNumber{69, 76};
inline constexpr PointSize letter{10.5, 15};
inline constexpr PointSize letterChart{8.5, 11};
} // namespace paper

/// Distances between things.
namespace space
{
inline constexpr int hair = 2;
inline constexpr int tiny = 4;
inline constexpr int small = 6;
inline constexpr int close = 8;
inline constexpr int betweenSheets = 10;
inline constexpr int medium = 12;
inline constexpr int insideSheet = 14;
inline constexpr int wide = 20;
inline constexpr int section = 28;
} // namespace space

/// Heights and widths of things.
namespace size
{
inline constexpr int marginColumn = 48; ///< the gutter left of the margin line
inline constexpr int menuBar = 26;
inline constexpr int pageHead = 54; ///< title line of a page without record
inline constexpr int recordHead = 140;
inline constexpr int statusBar = 24;
inline constexpr int listRow = 64;
inline constexpr int formRow = 32;
inline constexpr int figureRow = 23;
inline constexpr int closeRow = 20; ///< where many figures stand together
inline constexpr int tableHead = 27;
inline constexpr int groupHead = 23;
inline constexpr int button = 28;
inline constexpr int smallButton = 26;
inline constexpr int field = 26;
inline constexpr int sideSheet = 296;
inline constexpr int hitArea = 24; ///< least side of anything to click (WCAG 2.2, 2.5.8)
inline constexpr int leastWindowWidth = 1280;
inline constexpr int leastWindowHeight = 720;
} // namespace size

/// Lines and corners.
namespace stroke
{
inline constexpr int line = 1;
inline constexpr int focus = 2; ///< also a field with an error and the mark under a tab
inline constexpr int focusGap = 1;
inline constexpr int changedBar = 3;
inline constexpr int cornerRadius = 2; ///< buttons and fields; 0 on sheets and squares
inline constexpr double chart = 2.0;
inline constexpr double comparison = 1.4;
inline constexpr double dash = 4.0;
inline constexpr double dashGap = 3.0;
inline constexpr int chartTextHalo = 4;
/// Drawings of the body, mm at 1 : 1.
inline constexpr double contour = 1.5;
inline constexpr double innerContour = 0.8;
inline constexpr double hatch = 0.45;
} // namespace stroke

} // namespace quadrille::app
