// SPDX-License-Identifier: GPL-3.0-or-later
// The sizes of SheetStyle; sheet_style.cpp has the drawing.
#include "app/look/field_painter.h"
#include "app/look/icon_painter.h"
#include "app/look/look.h"
#include "app/look/menu_painter.h"
#include "app/look/roles.h"
#include "app/look/sheet_style.h"

#include <QAbstractItemView>
#include <QPlainTextEdit>
#include <QStyleOption>
#include <QTextEdit>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int buttonPadding = 13;
constexpr int linkPadding = 6;
constexpr int segmentPadding = 12;
constexpr int menuBarPadding = 9;
constexpr int tabPadding = 14;
constexpr int tabHeight = 31;
constexpr int scrollBarWidth = 12;
constexpr int leastScrollHandle = 28;
constexpr int indicator = 16;
constexpr int itemPadding = 7;

bool hasTwoPixelFrame(const QWidget* widget)
{
    return qobject_cast<const QTextEdit*>(widget) || qobject_cast<const QPlainTextEdit*>(widget) ||
           qobject_cast<const QAbstractItemView*>(widget);
}

/// The width of a text in bold, whatever is drawn now: tabs and filters must not move when chosen.
int boldWidth(const QFont& font, const QString& text)
{
    QFont bold = font;
    bold.setBold(true);
    return QFontMetrics(bold).size(Qt::TextShowMnemonic | Qt::TextSingleLine, text).width();
}

} // namespace

QRect SheetStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option,
                                 SubControl part, const QWidget* widget) const
{
    const auto* spin = qstyleoption_cast<const QStyleOptionSpinBox*>(option);
    if (control == CC_SpinBox && spin) {
        return fields::spinBoxPart(*spin, part, m_factor);
    }
    const auto* combo = qstyleoption_cast<const QStyleOptionComboBox*>(option);
    if (control == CC_ComboBox && combo) {
        return fields::comboBoxPart(*combo, part, m_factor);
    }
    const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
    if (control == CC_ScrollBar && bar) {
        const bool vertical = bar->orientation == Qt::Vertical;
        const int length = vertical ? bar->rect.height() : bar->rect.width();
        const auto range = static_cast<qint64>(bar->maximum) - bar->minimum;
        const auto shown = static_cast<qint64>(bar->pageStep);
        const int handle =
            range <= 0 ? length
                       : std::clamp(static_cast<int>(length * shown / (range + shown)),
                                    std::min(length, scaled(leastScrollHandle, m_factor)), length);
        const int start = sliderPositionFromValue(bar->minimum, bar->maximum, bar->sliderPosition,
                                                  length - handle, bar->upsideDown);
        const auto along = [&](int from, int to) {
            return vertical ? QRect(bar->rect.left(), bar->rect.top() + from, bar->rect.width(),
                                    to - from)
                            : QRect(bar->rect.left() + from, bar->rect.top(), to - from,
                                    bar->rect.height());
        };
        switch (part) {
        case SC_ScrollBarSlider:
            return along(start, start + handle);
        case SC_ScrollBarSubPage:
            return along(0, start);
        case SC_ScrollBarAddPage:
            return along(start + handle, length);
        case SC_ScrollBarGroove:
            return bar->rect;
        default:
            return {};
        }
    }
    return QProxyStyle::subControlRect(control, option, part, widget);
}

QRect SheetStyle::subElementRect(SubElement element, const QStyleOption* option,
                                 const QWidget* widget) const
{
    switch (element) {
    case SE_LineEditContents: {
        const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
        const bool framed = frame && frame->lineWidth > 0;
        // Qt's line edit leaves 2 px of its own at each side.
        const int in = scaled(fields::padding, m_factor) - (framed ? 2 : 4);
        return option->rect.adjusted(in, framed ? 2 : 0, -in, framed ? -2 : 0);
    }
    case SE_PushButtonContents:
        return option->rect;
    default:
        return QProxyStyle::subElementRect(element, option, widget);
    }
}

QSize SheetStyle::pushButtonSize(const QStyleOption& option, const QWidget* widget) const
{
    const auto* button = qstyleoption_cast<const QStyleOptionButton*>(&option);
    const Role role = roleOf(widget);
    const QString text = button ? button->text : QString();
    const QFont font = widget ? widget->font() : QFont();
    const int padding = role == Role::linkButton      ? linkPadding
                        : role == Role::segmentButton ? segmentPadding
                                                      : buttonPadding;
    int width =
        role == Role::segmentButton
            ? boldWidth(font, text)
            : QFontMetrics(font).size(Qt::TextShowMnemonic | Qt::TextSingleLine, text).width();
    if (button && text.isEmpty() && !button->icon.isNull()) {
        width = button->iconSize.width();
    }
    width += 2 * scaled(padding, m_factor);
    if (button && button->features.testFlag(QStyleOptionButton::HasMenu)) {
        width += scaled(space::wide, m_factor) / 2;
    }
    const int height = role == Role::linkButton ? size::smallButton : size::button;
    return {width, scaled(height, m_factor)};
}

QSize SheetStyle::sizeFromContents(ContentsType type, const QStyleOption* option,
                                   const QSize& contents, const QWidget* widget) const
{
    const int field = scaled(size::field, m_factor);
    switch (type) {
    case CT_PushButton:
        return pushButtonSize(*option, widget);
    case CT_LineEdit:
        return {contents.width() + 2 * scaled(fields::padding, m_factor), field};
    case CT_SpinBox:
    case CT_ComboBox:
        return {contents.width() + 2 * scaled(fields::padding, m_factor) +
                    scaled(fields::arrowColumn, m_factor),
                field};
    case CT_CheckBox:
    case CT_RadioButton:
    case CT_ToolButton: {
        const QSize base = QProxyStyle::sizeFromContents(type, option, contents, widget);
        const int hit = scaled(size::hitArea, m_factor);
        return base.expandedTo({hit, hit});
    }
    case CT_MenuBarItem:
        return {contents.width() + 2 * scaled(menuBarPadding, m_factor),
                scaled(size::menuBar, m_factor)};
    case CT_MenuItem:
        if (const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option)) {
            return menus::itemSize(*item, m_factor);
        }
        break;
    case CT_TabBarTab:
        if (const auto* tab = qstyleoption_cast<const QStyleOptionTab*>(option)) {
            const QFont font = widget ? widget->font() : QFont();
            return {boldWidth(font, tab->text) + 2 * scaled(tabPadding, m_factor),
                    scaled(tabHeight, m_factor)};
        }
        break;
    case CT_ItemViewItem: {
        const QSize base = QProxyStyle::sizeFromContents(type, option, contents, widget);
        return base.expandedTo({0, scaled(size::hitArea, m_factor)});
    }
    case CT_HeaderSection:
        return {QProxyStyle::sizeFromContents(type, option, contents, widget).width(),
                scaled(size::tableHead, m_factor)};
    default:
        break;
    }
    return QProxyStyle::sizeFromContents(type, option, contents, widget);
}

int SheetStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                            const QWidget* widget) const
{
    switch (metric) {
    case PM_ButtonShiftHorizontal:
    case PM_ButtonShiftVertical:
    case PM_MenuBarPanelWidth:
    case PM_MenuBarVMargin:
    case PM_MenuBarItemSpacing:
    case PM_TabBarTabShiftVertical:
    case PM_TabBarTabOverlap:
    case PM_TabBarBaseHeight:
    case PM_TabBarBaseOverlap:
    case PM_ScrollView_ScrollBarSpacing:
    case PM_MenuHMargin:
    case PM_ButtonDefaultIndicator:
        return 0;
    case PM_MenuBarHMargin:
        return scaled(space::close, m_factor);
    case PM_MenuVMargin:
        return scaled(space::tiny, m_factor);
    case PM_MenuPanelWidth:
    case PM_ToolTipLabelFrameWidth:
        return stroke::line;
    case PM_DefaultFrameWidth:
        return hasTwoPixelFrame(widget) ? stroke::focus : stroke::line;
    case PM_ScrollBarExtent:
        return scaled(scrollBarWidth, m_factor);
    case PM_ScrollBarSliderMin:
        return scaled(leastScrollHandle, m_factor);
    case PM_IndicatorWidth:
    case PM_IndicatorHeight:
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight:
        return scaled(indicator, m_factor);
    case PM_FocusFrameHMargin:
        return scaled(itemPadding, m_factor) - 1; // Qt adds the 1
    case PM_HeaderMargin:
        return scaled(itemPadding, m_factor);
    case PM_CheckBoxLabelSpacing:
    case PM_RadioButtonLabelSpacing:
        return scaled(space::close, m_factor);
    case PM_LayoutHorizontalSpacing:
    case PM_LayoutVerticalSpacing:
        return scaled(space::betweenSheets, m_factor);
    case PM_LayoutLeftMargin:
    case PM_LayoutRightMargin:
    case PM_LayoutTopMargin:
    case PM_LayoutBottomMargin:
        return scaled(space::insideSheet, m_factor);
    default:
        return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int SheetStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                          QStyleHintReturn* returned) const
{
    switch (hint) {
    case SH_EtchDisabledText:
    case SH_DitherDisabledText:
    case SH_Widget_Animate:
    case SH_Widget_Animation_Duration:
    case SH_DialogButtonBox_ButtonsHaveIcons:
    case SH_ComboBox_Popup:
    case SH_ItemView_ActivateItemOnSingleClick:
    case SH_ScrollBar_Transient:
    case SH_MenuBar_MouseTracking:
        return hint == SH_MenuBar_MouseTracking ? 1 : 0;
    case SH_UnderlineShortcut:
    case SH_ItemView_ShowDecorationSelected:
        return 1;
    case SH_SpinBox_StepModifier:
        // Shift makes ten steps of one; Ctrl is taken by other acts on a field.
        return static_cast<int>(Qt::ShiftModifier);
    default:
        return QProxyStyle::styleHint(hint, option, widget, returned);
    }
}

QIcon SheetStyle::standardIcon(StandardPixmap sign, const QStyleOption* option,
                               const QWidget* widget) const
{
    const auto ours = iconOf(sign, m_tokens);
    return ours ? *ours : QProxyStyle::standardIcon(sign, option, widget);
}

} // namespace quadrille::app
