// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/field_painter.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/shapes.h"

#include <QPainter>
#include <QStyleOption>
#include <QWidget>

namespace quadrille::app::fields
{

namespace
{

constexpr double arrowWidth = 7;

bool isEnabled(const QStyleOption& option)
{
    return option.state.testFlag(QStyle::State_Enabled);
}

/// A spin box takes the focus through the line edit inside it.
bool hasFocus(const QStyleOption& option, const QWidget* widget)
{
    return option.state.testFlag(QStyle::State_HasFocus) || (widget && widget->hasFocus());
}

/// The column at the end of a field, inside the border; left of the text in right-to-left writing.
QRect endColumn(const QStyleOption& option, double factor)
{
    const QRect rect = option.rect;
    const int width = scaled(arrowColumn, factor);
    const QRect column(rect.right() - width, rect.top() + 1, width, rect.height() - 2);
    return QStyle::visualRect(option.direction, rect, column);
}

void drawDivider(const QStyleOption& option, const QRect& column, QPainter& painter,
                 const QColor& colour)
{
    const int x = option.direction == Qt::RightToLeft ? column.right() + 1 : column.left();
    painter.fillRect(QRect(x, column.top() + 1, stroke::line, column.height() - 2), colour);
}

void drawSpinArrow(const QStyleOptionSpinBox& option, QStyle::SubControl part, Direction direction,
                   QPainter& painter, const Tokens& tokens, double factor)
{
    const auto enabledFlag = direction == Direction::up ? QAbstractSpinBox::StepUpEnabled
                                                        : QAbstractSpinBox::StepDownEnabled;
    const bool enabled = isEnabled(option) && option.stepEnabled.testFlag(enabledFlag);
    const QRect rect = spinBoxPart(option, part, factor);
    const bool pressed =
        option.activeSubControls.testFlag(part) && option.state.testFlag(QStyle::State_Sunken);
    if (enabled && pressed) {
        painter.fillRect(rect.adjusted(1, 1, -1, -1), tokens.tint);
    }
    const double towards = direction == Direction::up ? 1.0 : -1.0;
    const QPointF centre = QRectF(rect).center() + QPointF(0, towards);
    drawArrow(painter, centre, direction, arrowWidth * factor, enabled ? tokens.ink2 : tokens.line);
}

} // namespace

void drawFrame(const QRect& rect, bool enabled, bool focused, QPainter& painter,
               const Tokens& tokens, const QWidget* widget)
{
    const bool wrong = isOutOfRange(widget);
    const QColor border = wrong     ? tokens.warnLine
                          : focused ? tokens.mark
                          : enabled ? tokens.edge
                                    : tokens.line;
    const int width = wrong || focused ? stroke::focus : stroke::line;
    drawBox(painter, rect, enabled ? tokens.sheet : tokens.band, border, width,
            stroke::cornerRadius);
    if (wrong && focused) {
        // Both at once: the focus inside the warning.
        drawBox(painter, rect.adjusted(2, 2, -2, -2), QColor(), tokens.mark, stroke::line, 0);
    }
}

void drawSpinBox(const QStyleOptionSpinBox& option, QPainter& painter, const Tokens& tokens,
                 double factor, const QWidget* widget)
{
    if (option.frame) {
        drawFrame(option.rect, isEnabled(option), hasFocus(option, widget), painter, tokens,
                  widget);
    }
    if (option.buttonSymbols == QAbstractSpinBox::NoButtons) {
        return;
    }
    drawDivider(option, endColumn(option, factor), painter, tokens.line);
    drawSpinArrow(option, QStyle::SC_SpinBoxUp, Direction::up, painter, tokens, factor);
    drawSpinArrow(option, QStyle::SC_SpinBoxDown, Direction::down, painter, tokens, factor);
}

QRect spinBoxPart(const QStyleOptionSpinBox& option, QStyle::SubControl part, double factor)
{
    const QRect rect = option.rect;
    const bool buttons = option.buttonSymbols != QAbstractSpinBox::NoButtons;
    const QRect column = endColumn(option, factor);
    const int half = column.height() / 2;
    switch (part) {
    case QStyle::SC_SpinBoxUp:
        return buttons ? QRect(column.left(), column.top(), column.width(), half) : QRect();
    case QStyle::SC_SpinBoxDown:
        return buttons ? QRect(column.left(), column.bottom() + 1 - half, column.width(), half)
                       : QRect();
    case QStyle::SC_SpinBoxEditField: {
        const int in = stroke::focus;
        const int end = buttons ? column.width() + in : in;
        const QRect text = rect.adjusted(in, in, -end, -in);
        return QStyle::visualRect(option.direction, rect, text);
    }
    default:
        return rect;
    }
}

void drawComboBox(const QStyleOptionComboBox& option, QPainter& painter, const Tokens& tokens,
                  double factor, const QWidget* widget)
{
    if (option.frame) {
        drawFrame(option.rect, isEnabled(option), hasFocus(option, widget), painter, tokens,
                  widget);
    }
    const QPointF centre = QRectF(endColumn(option, factor)).center();
    drawArrow(painter, centre, Direction::down, (arrowWidth + 1) * factor,
              isEnabled(option) ? tokens.ink2 : tokens.line);
}

void drawComboBoxLabel(const QStyleOptionComboBox& option, QPainter& painter, const Tokens& tokens,
                       double factor)
{
    if (option.editable || option.currentText.isEmpty()) {
        return;
    }
    const int in = scaled(padding, factor) - stroke::focus;
    const QRect rect =
        comboBoxPart(option, QStyle::SC_ComboBoxEditField, factor).adjusted(in, 0, 0, 0);
    painter.save();
    painter.setPen(isEnabled(option) ? tokens.ink : tokens.ink3);
    const QString text =
        option.fontMetrics.elidedText(option.currentText, Qt::ElideRight, rect.width());
    painter.drawText(rect,
                     static_cast<int>(QStyle::visualAlignment(option.direction, Qt::AlignLeft) |
                                      Qt::AlignVCenter),
                     text);
    painter.restore();
}

QRect comboBoxPart(const QStyleOptionComboBox& option, QStyle::SubControl part, double factor)
{
    const QRect rect = option.rect;
    switch (part) {
    case QStyle::SC_ComboBoxArrow:
        return endColumn(option, factor);
    case QStyle::SC_ComboBoxEditField: {
        const int in = stroke::focus;
        const QRect text = rect.adjusted(in, in, -scaled(arrowColumn, factor) - in, -in);
        return QStyle::visualRect(option.direction, rect, text);
    }
    default:
        return rect;
    }
}

} // namespace quadrille::app::fields
