// SPDX-License-Identifier: GPL-3.0-or-later
// What a widget is for, so that the style can draw it: the dynamic property "role". In a .ui file
// it is a string property with the name of the enumerator; in code setRole() sets it.
#pragma once

class QWidget;

namespace quadrille::app
{

enum class Role {
    none,
    // buttons
    primaryButton, ///< the one main act of a page
    linkButton,    ///< an act that reads as text
    segmentButton, ///< one of a row of filters, see segment_row.h
    // labels
    titleText,      ///< title of the screen
    bigFigureText,  ///< the figure a sheet is about
    sheetTitleText, ///< head of an empty page
    listNameText,   ///< a name in a list
    strongText,
    secondLineText,
    captionText, ///< small, ink3
    axisText,
    warnText,       ///< on the warning strip, or beside a field outside its range
    warnStrongText, ///< the same, bold
    goodText,       ///< beside a tick
    // panels
    sheet,        ///< white with a line around
    sheetHead,    ///< head of a sheet: a line below
    band,         ///< the head of a table
    warningStrip, ///< warnBand with a warnLine below
    changedRow,   ///< a value that differs from the block before: bar at the left
    sideColumn,   ///< the time column: a line at the left
    pageHead,     ///< title line of a page: a line below
};

/// Sets the role and lets the style take it up, also on a widget that is already shown.
void setRole(QWidget& widget, Role role);
/// The role of a widget; none when it has no or an unknown one.
Role roleOf(const QWidget* widget);

/// A field whose value lies outside its range is drawn with a 2 px warnLine (dynamic property
/// "outOfRange").
void setOutOfRange(QWidget& field, bool outOfRange);
bool isOutOfRange(const QWidget* field);

} // namespace quadrille::app
