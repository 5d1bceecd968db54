// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/sheet_style.h"

#include "app/look/bar_painter.h"
#include "app/look/button_painter.h"
#include "app/look/field_painter.h"
#include "app/look/look.h"
#include "app/look/menu_painter.h"
#include "app/look/role_look.h"
#include "app/look/shapes.h"

#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QCalendarWidget>
#include <QCheckBox>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QStyleOption>
#include <QTabBar>
#include <QTextCharFormat>
#include <QTextEdit>
#include <QToolButton>

namespace quadrille::app
{

namespace
{

bool isTextArea(const QWidget* widget)
{
    return qobject_cast<const QTextEdit*>(widget) || qobject_cast<const QPlainTextEdit*>(widget);
}

bool answersToHover(const QWidget* widget)
{
    return qobject_cast<const QPushButton*>(widget) || qobject_cast<const QToolButton*>(widget) ||
           qobject_cast<const QComboBox*>(widget) || qobject_cast<const QTabBar*>(widget) ||
           qobject_cast<const QAbstractSpinBox*>(widget);
}

/// What Qt would do to some controls and we do not want.
void prepare(QWidget* widget, double factor)
{
    if (answersToHover(widget)) {
        widget->setAttribute(Qt::WA_Hover);
    }
    if (qobject_cast<QAbstractSpinBox*>(widget)) {
        // A spin box asks for the key that makes ten steps only when the style changes.
        QEvent change(QEvent::StyleChange);
        QCoreApplication::sendEvent(widget, &change);
    }
    if (auto* tabs = qobject_cast<QTabBar*>(widget)) {
        tabs->setExpanding(false);
    }
    if (auto* header = qobject_cast<QHeaderView*>(widget)) {
        header->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
        header->setHighlightSections(false);
        header->setFont(fontOf(TextStyle::secondLine, factor));
    }
    if (auto* calendar = qobject_cast<QCalendarWidget*>(widget)) {
        // Red is for harm; a week's end is a day like others.
        for (const auto day : {Qt::Saturday, Qt::Sunday}) {
            calendar->setWeekdayTextFormat(day, QTextCharFormat());
        }
        calendar->setVerticalHeaderFormat(QCalendarWidget::NoVerticalHeader);
    }
}

} // namespace

SheetStyle::SheetStyle(const Tokens& tokens, double factor)
    : QProxyStyle(QStringLiteral("Fusion"))
    , m_tokens(tokens)
    , m_factor(factor)
{
}

void SheetStyle::polish(QWidget* widget)
{
    QProxyStyle::polish(widget);
    prepare(widget, m_factor);
    const Role role = roleOf(widget);
    if (role == Role::none) {
        return;
    }
    if (const auto style = textStyleOf(role)) {
        widget->setFont(fontOf(*style, m_factor));
    }
    const auto colour = textColourOf(role, m_tokens);
    const auto ground = groundOf(role, m_tokens);
    if (colour || ground) {
        QPalette palette;
        if (colour) {
            palette.setColor(QPalette::WindowText, *colour);
            if (qobject_cast<const QLabel*>(widget)) {
                // Labels on the ground of a list are written in Text.
                palette.setColor(QPalette::Text, *colour);
            }
        }
        if (ground) {
            palette.setColor(QPalette::Window, *ground);
        }
        widget->setPalette(palette);
    }
    widget->setAttribute(Qt::WA_StyledBackground, ground.has_value());
}

void SheetStyle::unpolish(QWidget* widget)
{
    if (roleOf(widget) != Role::none) {
        widget->setFont(QFont());
        widget->setPalette(QPalette());
        widget->setAttribute(Qt::WA_StyledBackground, false);
    }
    QProxyStyle::unpolish(widget);
}

void SheetStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                               QPainter* painter, const QWidget* widget) const
{
    const bool enabled = option->state.testFlag(State_Enabled);
    switch (element) {
    case PE_Widget:
        drawPanel(roleOf(widget), option->rect, *painter, m_tokens);
        return;
    case PE_Frame:
    case PE_FrameMenu:
    case PE_FrameGroupBox:
        drawFrame(*option, *painter, widget);
        return;
    case PE_PanelMenu:
    case PE_PanelTipLabel:
        drawBox(*painter, option->rect, m_tokens.sheet, m_tokens.line, stroke::line, 0);
        return;
    case PE_PanelLineEdit:
        if (const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
            frame && frame->lineWidth > 0) {
            fields::drawFrame(option->rect, enabled, option->state.testFlag(State_HasFocus),
                              *painter, m_tokens, widget);
        }
        return;
    case PE_IndicatorCheckBox:
    case PE_IndicatorItemViewItemCheck:
        buttons::drawCheckIndicator(*option, *painter, m_tokens);
        return;
    case PE_IndicatorRadioButton:
        buttons::drawRadioIndicator(*option, *painter, m_tokens);
        return;
    case PE_FrameFocusRect:
        if (!qobject_cast<const QAbstractItemView*>(widget)) {
            drawFocusRing(*painter, option->rect, m_tokens.mark);
        }
        return;
    case PE_PanelItemViewItem:
    case PE_PanelItemViewRow:
        drawItemGround(*option, *painter);
        return;
    case PE_FrameTabBarBase:
    case PE_PanelMenuBar:
        painter->fillRect(
            QRect(option->rect.left(), option->rect.bottom(), option->rect.width(), stroke::line),
            m_tokens.line);
        return;
    case PE_PanelStatusBar:
        painter->fillRect(option->rect, m_tokens.desk);
        painter->fillRect(QRect(option->rect.left(), option->rect.top(), option->rect.width(), 1),
                          m_tokens.line);
        return;
    case PE_FrameTabWidget:
    case PE_FrameStatusBarItem:
    case PE_FrameButtonTool:
    case PE_PanelButtonTool:
    case PE_IndicatorToolBarSeparator:
        return;
    default:
        QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

/// A part of the head of a table; false where the element is another.
bool SheetStyle::drawHeader(ControlElement element, const QStyleOption& option, QPainter& painter,
                            const QWidget* widget) const
{
    if (element == CE_HeaderEmptyArea) {
        painter.fillRect(option.rect, m_tokens.band);
        painter.fillRect(QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), 1),
                         m_tokens.line);
        return true;
    }
    const auto* header = qstyleoption_cast<const QStyleOptionHeader*>(&option);
    if (element == CE_HeaderSection && header) {
        bars::drawHeaderSection(*header, painter, m_tokens);
        return true;
    }
    if (element == CE_HeaderLabel && header) {
        // Qt leaves the margin above and below too, and that would cut what hangs under the line.
        const int margin = pixelMetric(PM_HeaderMargin, &option, widget);
        QStyleOptionHeader whole = *header;
        whole.rect.adjust(0, -margin, 0, margin);
        QProxyStyle::drawControl(element, &whole, &painter, widget);
        return true;
    }
    return false;
}

void SheetStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                             const QWidget* widget) const
{
    if (const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option)) {
        if (element == CE_PushButtonBevel) {
            return buttons::drawBevel(*button, *painter, m_tokens, widget);
        }
        if (element == CE_PushButtonLabel) {
            return buttons::drawLabel(*button, *painter, m_tokens, widget);
        }
        if (element == CE_PushButton) {
            buttons::drawBevel(*button, *painter, m_tokens, widget);
            return buttons::drawLabel(*button, *painter, m_tokens, widget);
        }
    }
    if (const auto* tab = qstyleoption_cast<const QStyleOptionTab*>(option)) {
        if (element == CE_TabBarTabShape) {
            return bars::drawTabShape(*tab, *painter, m_tokens);
        }
        if (element == CE_TabBarTabLabel) {
            return bars::drawTabLabel(*tab, *painter, m_tokens);
        }
    }
    if (const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option)) {
        if (element == CE_MenuBarItem) {
            return menus::drawBarItem(*item, *painter, m_tokens);
        }
        if (element == CE_MenuItem) {
            return menus::drawItem(*item, *painter, m_tokens, m_factor);
        }
    }
    if (element == CE_MenuBarEmptyArea) {
        painter->fillRect(option->rect, m_tokens.desk);
        return drawPrimitive(PE_PanelMenuBar, option, painter, widget);
    }
    const auto* combo = qstyleoption_cast<const QStyleOptionComboBox*>(option);
    if (element == CE_ComboBoxLabel && combo) {
        return fields::drawComboBoxLabel(*combo, *painter, m_tokens, m_factor);
    }
    if (drawHeader(element, *option, *painter, widget)) {
        return;
    }
    const auto* bar = qstyleoption_cast<const QStyleOptionProgressBar*>(option);
    if (element == CE_ProgressBarContents && bar) {
        return bars::drawProgress(*bar, *painter, m_tokens);
    }
    if (element == CE_ProgressBarGroove) {
        return drawBox(*painter, option->rect, m_tokens.sheet, m_tokens.edge, stroke::line, 0);
    }
    if (element == CE_Splitter || element == CE_SizeGrip) {
        return;
    }
    QProxyStyle::drawControl(element, option, painter, widget);
}

void SheetStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                    QPainter* painter, const QWidget* widget) const
{
    const auto* spin = qstyleoption_cast<const QStyleOptionSpinBox*>(option);
    if (control == CC_SpinBox && spin) {
        return fields::drawSpinBox(*spin, *painter, m_tokens, m_factor, widget);
    }
    const auto* combo = qstyleoption_cast<const QStyleOptionComboBox*>(option);
    if (control == CC_ComboBox && combo) {
        return fields::drawComboBox(*combo, *painter, m_tokens, m_factor, widget);
    }
    const auto* button = qstyleoption_cast<const QStyleOptionToolButton*>(option);
    if (control == CC_ToolButton && button) {
        return buttons::drawToolButton(*button, *painter, m_tokens);
    }
    const auto* group = qstyleoption_cast<const QStyleOptionGroupBox*>(option);
    if (control == CC_GroupBox && group && !group->subControls.testFlag(SC_GroupBoxCheckBox)) {
        return drawGroupTitle(*group, *painter, widget);
    }
    if (control == CC_ScrollBar && drawScrollBar(*option, *painter, widget)) {
        return;
    }
    QProxyStyle::drawComplexControl(control, option, painter, widget);
}

bool SheetStyle::drawScrollBar(const QStyleOptionComplex& option, QPainter& painter,
                               const QWidget* widget) const
{
    const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(&option);
    if (!bar) {
        return false;
    }
    const QRect handle = subControlRect(CC_ScrollBar, bar, SC_ScrollBarSlider, widget);
    const bool active = bar->state.testFlag(State_Sunken) || bar->state.testFlag(State_MouseOver);
    bars::drawScrollBar(bar->rect, handle, bar->orientation == Qt::Vertical, active, painter,
                        m_tokens);
    return true;
}

void SheetStyle::drawGroupTitle(const QStyleOptionGroupBox& option, QPainter& painter,
                                const QWidget* widget) const
{
    const QRect rect = subControlRect(CC_GroupBox, &option, SC_GroupBoxLabel, widget);
    painter.save();
    painter.setFont(fontOf(TextStyle::strong, m_factor));
    painter.setPen(option.state.testFlag(State_Enabled) ? m_tokens.ink : m_tokens.ink3);
    painter.drawText(QRect(rect.left(), rect.top(), option.rect.width(), rect.height()),
                     Qt::AlignVCenter | Qt::TextShowMnemonic | Qt::TextSingleLine, option.text);
    painter.restore();
}

void SheetStyle::drawFrame(const QStyleOption& option, QPainter& painter,
                           const QWidget* widget) const
{
    if (roleOf(widget) != Role::none) {
        return;
    }
    if (isTextArea(widget)) {
        fields::drawFrame(option.rect, option.state.testFlag(State_Enabled),
                          option.state.testFlag(State_HasFocus), painter, m_tokens, widget);
        return;
    }
    const bool focusedView = qobject_cast<const QAbstractItemView*>(widget) && widget->hasFocus();
    drawBox(painter, option.rect, QColor(), focusedView ? m_tokens.mark : m_tokens.line,
            focusedView ? stroke::focus : stroke::line, 0);
}

void SheetStyle::drawItemGround(const QStyleOption& option, QPainter& painter) const
{
    const auto* item = qstyleoption_cast<const QStyleOptionViewItem*>(&option);
    if (item && item->backgroundBrush.style() != Qt::NoBrush) {
        painter.fillRect(option.rect, item->backgroundBrush);
    }
    if (option.state.testFlag(State_Selected)) {
        painter.fillRect(option.rect, m_tokens.tint);
    }
}

} // namespace quadrille::app
